import type { BirthView } from '../gen/BirthView';
import type { Outgoing } from '../gen/Outgoing';
import type { SharedTo } from '../gen/SharedTo';
import type { SharedWhat } from '../gen/SharedWhat';

/** A file that can be written of a birth. */
interface OutgoingFile {
  /** What it is called once it was given. */
  what: SharedWhat;
  label: `ui-${string}`;
  /** Who has it mostly. */
  to: SharedTo | null;
  /** The files of it: one, or one for each placenta. */
  files: (view: BirthView) => Outgoing[];
}

const ofPlacentas =
  (kind: 'laboratory' | 'family') =>
  (view: BirthView): Outgoing[] =>
    view.examinations.map(({ placenta }) => ({ kind, placenta }));

/** Photographs make it large, so that they go along only in a file of their own choice. */
const bundles = (view: BirthView): Outgoing[] => [{ kind: 'fhir' }, ...(view.photos.length > 0 ? [{ kind: 'fhir', photos: true } as const] : [])];

/** Everything that can be written, in the order in which it is offered. */
export const OUTGOING: OutgoingFile[] = [
  { what: 'transfer', label: 'ui-file-transfer', to: 'hospital', files: () => [{ kind: 'transfer' }] },
  { what: 'record', label: 'ui-file-record', to: null, files: () => [{ kind: 'record' }] },
  { what: 'laboratory', label: 'ui-file-laboratory', to: 'laboratory', files: ofPlacentas('laboratory') },
  { what: 'family', label: 'ui-file-family', to: 'family', files: ofPlacentas('family') },
  { what: 'parents', label: 'ui-file-parents', to: 'family', files: () => [{ kind: 'parents' }] },
  { what: 'calendar', label: 'ui-file-calendar', to: 'family', files: () => [{ kind: 'calendar' }] },
  { what: 'fhir', label: 'ui-file-fhir', to: null, files: bundles },
  { what: 'csv', label: 'ui-file-csv', to: null, files: () => [{ kind: 'csv' }] },
  { what: 'entries', label: 'ui-file-entries', to: null, files: () => [{ kind: 'entries' }] },
];

/** What can be given out of hand: what is said, and every file. */
export const GIVEN: SharedWhat[] = ['handover', ...OUTGOING.map(({ what }) => what)];
