import type { Finding } from '../gen/Finding';
import type { Level } from '../gen/Level';

const GRAVITY: Record<Level, number> = { note: 1, caution: 2, limit: 3 };

/** What each level is called. */
export const LEVEL_NAMES: Record<Level, `ui-${string}`> = { limit: 'ui-level-limit', caution: 'ui-level-caution', note: 'ui-level-note' };

/** The name of the time reminder that a finding is; none where it tells of something else than a time. */
export function reminderKey({ about, level, reminder, threshold }: Finding): string | null {
  if (reminder) return reminder;
  return about.about === 'third_stage' && level !== null ? JSON.stringify([about, level, threshold?.words ?? null]) : null;
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
