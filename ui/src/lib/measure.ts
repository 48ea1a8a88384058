import type { Kind } from '../gen/Kind';
import { figure } from './figure';

/** How many figures after the point are shown: mm are entered as cm. */
export function decimalsOf(kind: Kind): number {
  return kind === 'mm' || kind === 'pieces' ? 1 : 0;
}

/** What stands in the display, as the number that the core takes; none while nothing stands there. */
export function fromDisplay(text: string, kind: Kind): number | null {
  if (text === '' || text === '.') return null;
  const number = Number(text);
  return Number.isFinite(number) ? Math.round(number * 10 ** decimalsOf(kind)) : null;
}

/** A number of the core, as it is typed into the display, with a point. */
export function toDisplay(value: number, kind: Kind): string {
  return (value / 10 ** decimalsOf(kind)).toFixed(decimalsOf(kind));
}

/** The same as it is shown: by the language's sign. */
export function shownOf(value: number, kind: Kind): string {
  return figure(toDisplay(value, kind));
}

/** The display after one more key; a key that does not fit changes nothing. */
export function pressKey(text: string, key: string, kind: Kind): string {
  if (key === 'back') return text.slice(0, -1);
  if (key === '.' && (decimalsOf(kind) === 0 || text.includes('.'))) return text;
  const places = text.includes('.') ? text.length - text.indexOf('.') - 1 : -1;
  if (places >= decimalsOf(kind) || text.length >= 6) return text;
  return key === '.' && text === '' ? '0.' : text + key;
}
