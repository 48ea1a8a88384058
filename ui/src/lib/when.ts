import type { At } from '../gen/At';
import type { Precision } from '../gen/Precision';
import { ago } from './touch';

/** When an entry happened, as a sheet holds it while it is typed. */
export interface When {
  /** `keep` leaves the time of an entry that is put right. */
  mode: 'now' | 'typed' | 'keep';
  date: string;
  clock: string;
  precision: Precision;
}

/** A moment to begin typing from: local date, and hour and minute. */
export interface Moment {
  date: string;
  clock: string;
}

/** The core's form; none to keep the time as it is. */
export function toAt(when: When, touched: number): At | null {
  switch (when.mode) {
    case 'keep':
      return null;
    case 'now':
      return { at: 'now', ago_ms: ago(touched) };
    case 'typed':
      return { at: 'typed', date: when.date, clock: when.clock, precision: when.precision };
  }
}

/** `03:12` from `03:12:40`. */
export function minuteOf(clock: string): string {
  return clock.slice(0, 5);
}
