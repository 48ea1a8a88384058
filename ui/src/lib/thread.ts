import type { BirthView } from '../gen/BirthView';
import type { LineView } from '../gen/LineView';
import type { Kind } from './facts';

/** Kinds that belong to the thread of the third stage; the rest stands in the timeline. */
const ON_THREAD: readonly Kind[] = [
  'baby_born',
  'cord_pulsation_stopped',
  'cord_clamped',
  'cord_cut',
  'placenta_born',
  'membranes_born',
  'blood_loss',
  'medicine_given',
  'mother_observed',
  'apgar_scored',
];

export interface Knot {
  entry: string;
  kind: Kind;
  message: LineView['message'];
  clock: string;
  since: string | null;
}

/** What stands in the chart, in order of time. */
export function thread(view: BirthView): Knot[] {
  return view.timeline
    .filter((line) => !line.retracted && ON_THREAD.includes(line.fact.kind))
    .map(({ entry, fact, message, clock, since_birth }) => ({ entry, kind: fact.kind, message, clock, since: fact.kind === 'baby_born' ? null : since_birth }));
}
