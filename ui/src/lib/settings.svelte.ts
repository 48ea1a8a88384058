/** How this device looks and sounds. Nothing of a client is kept here. */
export type Theme = 'day' | 'night' | 'red';

/** Minutes without a touch after which the practice rests. */
export const REST_AFTER = [1, 5, 15, 30] as const;
const REST_USUAL = 5;
const KEY = 'secundine-settings';

interface Kept {
  language: string | null;
  theme: Theme;
  sound: boolean;
  vibration: boolean;
  restAfter: number;
  readAloud: boolean;
  measuring: boolean;
}

class Settings {
  /** BCP 47 tag of the language that was chosen by hand; none, as the device speaks. */
  language = $state<string | null>(null);
  theme = $state<Theme>('day');
  sound = $state(true);
  vibration = $state(true);
  /** Minutes: one of [`REST_AFTER`]. */
  restAfter = $state(REST_USUAL);
  /** The examination is read aloud. */
  readAloud = $state(false);
  /** Whether a disc can be measured on a photograph. */
  measuring = $state(false);

  constructor() {
    const kept = read();
    const dark = typeof matchMedia === 'function' && matchMedia('(prefers-color-scheme: dark)').matches;
    this.language = kept.language ?? null;
    this.theme = kept.theme ?? (dark ? 'night' : 'day');
    this.sound = kept.sound ?? true;
    this.vibration = kept.vibration ?? true;
    this.measuring = kept.measuring ?? false;
    this.restAfter = REST_AFTER.find((minutes) => minutes === kept.restAfter) ?? REST_USUAL;
    this.readAloud = kept.readAloud ?? false;
  }

  /** Shows the theme and keeps the choices. */
  apply(): void {
    document.documentElement.dataset['theme'] = this.theme;
    const { language, theme, sound, vibration, restAfter, readAloud, measuring } = this;
    const kept: Kept = { language, theme, sound, vibration, restAfter, readAloud, measuring };
    try {
      localStorage.setItem(KEY, JSON.stringify(kept));
    } catch {
      // A full or forbidden storage only means that the choice is asked again next time.
    }
  }
}

function read(): Partial<Kept> {
  try {
    return JSON.parse(localStorage.getItem(KEY) ?? '{}') as Partial<Kept>;
  } catch {
    return {};
  }
}

export const settings = new Settings();
