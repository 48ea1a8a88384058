import type { At } from '../gen/At';
import type { Precision } from '../gen/Precision';
import type { Message } from '../gen/Message';
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

/** A date such as `2026-11-25` in words; anything else as it stands. */
export function dateWords(date: string): Message {
  const [, year, month, day] = /^(\d{4})-(\d\d)-(\d\d)$/.exec(date) ?? [];
  if (!year) return { id: 'value-text', args: { value: date } };
  return { id: 'date', args: { year, month: Number(month), day: Number(day) } };
}

/** A date and a time such as `2026-11-25 03:12:40` in words. */
export function momentWords(moment: string): Message {
  const [date = '', clock] = moment.split(' ');
  return clock ? { id: 'date-clock', args: { date: dateWords(date), clock } } : dateWords(date);
}

/** `03:12` from `03:12:40`. */
export function minuteOf(clock: string): string {
  return clock.slice(0, 5);
}
