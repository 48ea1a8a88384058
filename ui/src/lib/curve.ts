import type { BloodCurve } from '../gen/BloodCurve';
import type { BloodMark } from '../gen/BloodMark';

const LEAST_MS = 10 * 60_000;
const HEADROOM = 1.1;

/** How much a curve shows: from the first amount or the birth until now, and up to the next mark that is not yet reached. */
export function reach({ points, now_ms, marks }: BloodCurve): { fromMs: number; toMs: number; volume: number; marks: BloodMark[] } {
  const times = points.map(({ at_ms }) => at_ms);
  const total = points.at(-1)?.total ?? 0;
  const next = marks.find(({ volume }) => volume > total)?.volume ?? total;
  const volume = Math.max(next, total, 1) * HEADROOM;
  // Of rules with one volume the gravest is drawn.
  const gravest = (mark: BloodMark): BloodMark['level'] => (marks.some((other) => other.volume === mark.volume && other.level === 'limit') ? 'limit' : mark.level);
  const lines = marks.filter((mark, place) => mark.volume <= volume && marks.findIndex((other) => other.volume === mark.volume && other.level === gravest(mark)) === place);
  return { fromMs: Math.min(0, ...times), toMs: Math.max(LEAST_MS, now_ms, ...times), volume, marks: lines };
}
