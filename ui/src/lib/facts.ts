import type { Fact } from '../gen/Fact';

export type Kind = Fact['kind'];

/** Acts and things that have a sign of their own beside the kinds of entries. */
export type Act = 'cord_pulsing' | 'pad_on_scale' | 'jug' | 'by_eye' | 'fundus' | 'thread';

/** Facts that a sheet asks for; the others are made with one touch or elsewhere. */
export const SHEETS = ['blood_loss', 'mother_observed', 'perineum_examined', 'medicine_given', 'apgar_scored', 'newborn_measured', 'noted', 'client_recorded', 'travel_time_set', 'next_contact_planned', 'asked_for', 'shared'] as const;
export type SheetKind = (typeof SHEETS)[number];

export function isSheetKind(kind: Kind): kind is SheetKind {
  return (SHEETS as readonly Kind[]).includes(kind);
}

/** Facts whose entry stands for something else than a moment: they are not corrected from the timeline. */
export function isFixed(kind: Kind): boolean {
  return kind === 'signed' || kind === 'retracted' || kind === 'unknown' || kind === 'birth_registered' || kind === 'practice_described';
}

/** The same text for the same fact. */
export function factKey(fact: Fact): string {
  return JSON.stringify(fact);
}

/** A stable name for tests: the kind, and the baby where it is not the first. */
export function factName(fact: Fact): string {
  if (fact.kind === 'response_marked') return `${fact.kind}-${fact.data.step}`;
  if (fact.kind === 'separation_seen') return `${fact.kind}-${fact.data.sign}`;
  if (fact.kind === 'newborn_event') return `${fact.kind}-${fact.data.event}-${fact.data.baby}`;
  const baby = firstBaby(fact);
  return baby > 1 ? `${fact.kind}-${baby}` : fact.kind;
}

function firstBaby(fact: Fact): number {
  switch (fact.kind) {
    case 'baby_born':
    case 'cord_pulsation_stopped':
    case 'cord_clamped':
    case 'cord_cut':
      return fact.data.baby;
    case 'placenta_born':
    case 'membranes_born':
      return fact.data.babies[0] ?? 1;
    default:
      return 1;
  }
}
