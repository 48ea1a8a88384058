import type { EntryId } from '../gen/EntryId';
import type { LineView } from '../gen/LineView';
import type { MotherObservation } from '../gen/MotherObservation';
import type { NewbornMeasures } from '../gen/NewbornMeasures';
import { minuteOf } from './when';
import { ui } from './words';

/** One look at somebody with its local time. */
export interface Look<T> {
  clock: string;
  seen: T;
}

interface Looks {
  mother_observed: MotherObservation;
  newborn_measured: NewbornMeasures;
}

/** The looks of one kind that stand in the record, latest first; without the one that is being put right. */
export function looks<K extends keyof Looks>(timeline: readonly LineView[], kind: K, without: EntryId | null): Look<Looks[K]>[] {
  return timeline
    .flatMap(({ fact, clock, retracted, entry }) => (fact.kind === kind && !retracted && entry !== without ? [{ clock, seen: fact.data as Looks[K] }] : []))
    .reverse();
}

/** The last reading of one sign in words; none where it was not read yet. */
export function lastReading<T, K extends keyof T>(earlier: readonly Look<T>[], key: K, show: (value: NonNullable<T[K]>) => string): string | null {
  for (const { clock, seen } of earlier) {
    const value = seen[key];
    if (value !== null && value !== undefined) return ui('ui-last-reading', { value: show(value), clock: minuteOf(clock) });
  }
  return null;
}
