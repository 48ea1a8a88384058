/** How the page is lit. */
export type Theme = 'day' | 'night' | 'red';
/** What is chosen: one of them, or by itself. Dim red comes by hand only. */
export type Light = Theme | 'auto';

/** Night from this hour on, and until that one. (ours) */
const NIGHT_FROM = 20;
const NIGHT_UNTIL = 7;
/** Under so many lux it is dark round the device; a room lit for reading has some hundreds. (ours) */
const DARK_LUX = 10;

/** What is known of the light round the device. */
export interface Round {
  /** The system is set to dark. */
  dark: boolean;
  /** Hour of the local day, 0 to 23. */
  hour: number;
  /** Light that falls on the device, lux; none where it has no sensor. */
  lux: number | null;
}

/** The theme for this light. */
export function themeOf(light: Light, { dark, hour, lux }: Round): Theme {
  if (light !== 'auto') return light;
  const late = hour >= NIGHT_FROM || hour < NIGHT_UNTIL;
  return dark || late || (lux !== null && lux < DARK_LUX) ? 'night' : 'day';
}
