import type { Finding } from '../gen/Finding';
import type { Level } from '../gen/Level';

const GRAVITY: Record<Level, number> = { note: 1, caution: 2, limit: 3 };

/** Findings that ask for attention, gravest first; of equally grave ones in the core's order. */
export function standing(findings: Finding[]): Finding[] {
  return findings.filter((finding) => finding.level !== null).sort((a, b) => gravity(b) - gravity(a));
}

/** The finding to show where there is room for one. */
export function gravest(findings: Finding[]): Finding | null {
  return standing(findings)[0] ?? null;
}

/** Findings told quietly: within, not recorded, cannot be told. */
export function quiet(findings: Finding[]): Finding[] {
  return findings.filter((finding) => finding.level === null);
}

function gravity(finding: Finding): number {
  return finding.level ? GRAVITY[finding.level] : 0;
}
