import type { EntryId } from '../gen/EntryId';
import type { LineView } from '../gen/LineView';
import type { MotherObservation } from '../gen/MotherObservation';
import { minuteOf } from './when';
import { ui } from './words';

/** One look at the mother with its local time. */
export interface Look {
  clock: string;
  seen: MotherObservation;
}

/** The looks at the mother that stand in the record, latest first; without the one that is being put right. */
export function looks(timeline: readonly LineView[], without: EntryId | null): Look[] {
  return timeline
    .flatMap((line) => (line.fact.kind === 'mother_observed' && !line.retracted && line.entry !== without ? [{ clock: line.clock, seen: line.fact.data }] : []))
    .reverse();
}

/** The last reading of one sign in words; none where it was not read yet. */
export function lastReading<K extends keyof MotherObservation>(
  earlier: readonly Look[],
  key: K,
  show: (value: NonNullable<MotherObservation[K]>) => string,
): string | null {
  for (const { clock, seen } of earlier) {
    const value = seen[key];
    if (value !== null && value !== undefined) return ui('ui-last-reading', { value: show(value), clock: minuteOf(clock) });
  }
  return null;
}
