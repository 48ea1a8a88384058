import type { FieldState } from '../gen/FieldState';
import { ui } from './words';

const UNITS: Record<string, `ui-${string}`> = {
  min: 'ui-unit-min',
  h: 'ui-unit-hours',
  mL: 'ui-unit-ml',
  '/min': 'ui-unit-per-minute',
  'mm[Hg]': 'ui-unit-mmhg',
  Cel: 'ui-unit-celsius',
  '%': 'ui-unit-percent',
  'g/mL': 'ui-unit-grams-per-ml',
};

/** The unit of a protocol's number in words; nothing for a ratio. */
export function unit(code: string): string {
  const id = UNITS[code];
  return id ? ui(id) : '';
}

/** The signs of comparison as they are printed. */
export const SIGNS = { '>=': '≥', '>': '>', '<': '<', '<=': '≤' } as const;

/** What somebody set; not off, and not open. */
export type SetState = Exclude<FieldState, { state: 'off' }>;

export function isSet(state: FieldState | null): state is SetState {
  return state !== null && state.state !== 'off';
}

/** A number as the steppers take it: without its point. */
export function whole(value: number, decimals: number): number {
  return Math.round(value * 10 ** decimals);
}

export function fraction(value: number, decimals: number): number {
  return value / 10 ** decimals;
}
