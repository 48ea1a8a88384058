import type { BirthView } from '../gen/BirthView';
import type { Finding } from '../gen/Finding';
import type { Level } from '../gen/Level';
import type { Coming } from './reminders';

const GRAVITY: Record<Level, number> = { note: 1, caution: 2, limit: 3 };

/** What each level is called. */
export const LEVEL_NAMES: Record<Level, `ui-${string}`> = { limit: 'ui-level-limit', caution: 'ui-level-caution', note: 'ui-level-note' };

/** The name of the time reminder that a finding is; none where it tells of something else than a time. */
export function reminderKey({ about, level, reminder, threshold }: Finding): string | null {
  if (reminder) return reminder;
  return about.about === 'third_stage' && level !== null ? JSON.stringify([about, level, threshold?.words ?? null]) : null;
}

/** The time reminders of a birth: those of its due lines that are `armed`, and what its findings tell of a time that has passed. */
export function comingOf(view: BirthView, arrival: number, armed: ReadonlySet<string>): Coming[] {
  const speed = view.third_stage?.speed ?? 1;
  const coming: Coming[] = view.due.filter(({ id }) => armed.has(id)).map(({ id, level, in_ms }) => ({ key: id, level, at: in_ms < 0 ? -Infinity : arrival + in_ms / speed }));
  for (const finding of view.findings) {
    const key = reminderKey(finding);
    const stands = coming.some((other) => other.key === key && other.at === -Infinity);
    if (key !== null && finding.level !== null && !stands) coming.push({ key, level: finding.level, at: -Infinity });
  }
  return coming;
}

/** Findings that ask for attention, gravest first; of equally grave ones in the core's order. */
export function standing(findings: Finding[]): Finding[] {
  return findings.filter((finding) => finding.level !== null).sort((a, b) => gravity(b.level) - gravity(a.level));
}

/** The finding to show where there is room for one. */
export function gravest(findings: Finding[]): Finding | null {
  return standing(findings)[0] ?? null;
}

/** Findings told quietly: within, not recorded, cannot be told. */
export function quiet(findings: Finding[]): Finding[] {
  return findings.filter((finding) => finding.level === null);
}

/** The graver, the greater. */
export function gravity(level: Level | null): number {
  return level ? GRAVITY[level] : 0;
}
