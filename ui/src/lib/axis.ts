import type { Span } from '../gen/Span';

const SECOND = 1000;
const MINUTE = 60 * SECOND;
const HOUR = 60 * MINUTE;
export const DAY = 24 * HOUR;

/** Distances between two labels of the axis, least first. */
const STEPS = [10 * SECOND, 30 * SECOND, MINUTE, 2 * MINUTE, 5 * MINUTE, 10 * MINUTE, 15 * MINUTE, 30 * MINUTE, HOUR, 2 * HOUR, 3 * HOUR, 6 * HOUR, 12 * HOUR, DAY];
/** Room that a label takes. */
const LABEL_PX = 72;
/** One step closer. */
export const CLOSER = 1.6;
/** The closest look. */
const CLOSEST_MS = 2 * MINUTE;
/** Part of what is looked at that stays free at each end: half a sign on the narrowest phone. */
const MARGIN = 0.09;

/** A label of the axis. */
export interface Tick {
  ms: number;
  text: string;
}

/** Where a moment stands, in pixels from the beginning of the window. */
export function across(window: Span, width: number): (ms: number) => number {
  const scale = width / (window.to_ms - window.from_ms);
  return (ms) => (ms - window.from_ms) * scale;
}

/** The moment at so many pixels. */
export function momentAcross(window: Span, width: number, px: number): number {
  return Math.round(window.from_ms + (px / width) * (window.to_ms - window.from_ms));
}

/** With room at both ends, so that no sign is cut off. */
export function padded({ from_ms, to_ms }: Span): Span {
  const room = (to_ms - from_ms) * MARGIN;
  return { from_ms: from_ms - room, to_ms: to_ms + room };
}

/** The distance of two labels that leaves each its room. */
export function stepOf({ from_ms, to_ms }: Span, width: number): number {
  const least = ((to_ms - from_ms) * LABEL_PX) / Math.max(width, 1);
  return STEPS.find((step) => step >= least) ?? Math.ceil(least / DAY) * DAY;
}

/** Labels at round times of the clock on the wall; the first of a day has its date. */
export function ticks(window: Span, width: number, zero_local_ms: number): Tick[] {
  const step = stepOf(window, width);
  const found: Tick[] = [];
  for (let local = Math.ceil((zero_local_ms + window.from_ms) / step) * step; local <= zero_local_ms + window.to_ms; local += step) {
    found.push({ ms: local - zero_local_ms, text: local % DAY === 0 ? dateOf(local).slice(5) : clockOf(local, step < MINUTE) });
  }
  return found;
}

/** `03:12`, or `03:12:40`. */
export function clockOf(local_ms: number, seconds = false): string {
  return new Date(local_ms).toISOString().slice(11, seconds ? 19 : 16);
}

/** `2026-11-25`. */
export function dateOf(local_ms: number): string {
  return new Date(local_ms).toISOString().slice(0, 10);
}

/** The window seen so many times as closely, about a moment; never closer than two minutes or wider than all there is. */
export function zoomed(window: Span, closer: number, about: number, whole: Span): Span {
  const wide = window.to_ms - window.from_ms;
  const most = Math.max(whole.to_ms - whole.from_ms, CLOSEST_MS);
  const next = Math.min(Math.max(wide / closer, CLOSEST_MS), most);
  const from_ms = about - (about - window.from_ms) * (next / wide);
  return within({ from_ms, to_ms: from_ms + next }, whole);
}

/** The window moved by a part of itself. */
export function panned(window: Span, part: number, whole: Span): Span {
  const by = (window.to_ms - window.from_ms) * part;
  return within({ from_ms: window.from_ms + by, to_ms: window.to_ms + by }, whole);
}

/** Where a finger is, in pixels from the beginning of the window and from the top. */
export interface Finger {
  x: number;
  y: number;
}

/** The window as two fingers pull it apart or press it together: what lay between them stays between them. */
export function pinched(window: Span, width: number, from: readonly [Finger, Finger], to: readonly [Finger, Finger], whole: Span): Span {
  const apart = ([a, b]: readonly [Finger, Finger]): number => Math.max(Math.hypot(a.x - b.x, a.y - b.y), 1);
  const middle = ([a, b]: readonly [Finger, Finger]): number => (a.x + b.x) / 2;
  const next = zoomed(window, apart(to) / apart(from), momentAcross(window, width, middle(from)), whole);
  return panned(next, (middle(from) - middle(to)) / width, whole);
}

/** The window moved no further than it takes to hold a moment, with some room beside it. */
export function holding(window: Span, ms: number, whole: Span): Span {
  const room = (window.to_ms - window.from_ms) * (MARGIN / 2);
  const by = Math.min(0, ms - room - window.from_ms) + Math.max(0, ms + room - window.to_ms);
  return by === 0 ? window : within({ from_ms: window.from_ms + by, to_ms: window.to_ms + by }, whole);
}

/** Back over what there is, where it has left it. */
function within({ from_ms, to_ms }: Span, whole: Span): Span {
  const wide = to_ms - from_ms;
  const from = Math.min(Math.max(from_ms, whole.from_ms), Math.max(whole.to_ms - wide, whole.from_ms));
  return { from_ms: from, to_ms: from + wide };
}

/** Entries that would lie on each other, gathered: each pile begins with an entry and has all up to so many pixels from it. */
export function piles<T extends { at_ms: number }>(points: readonly T[], x: (ms: number) => number, gap: number): T[][] {
  const found: T[][] = [];
  for (const point of points) {
    const last = found.at(-1);
    if (last?.[0] && x(point.at_ms) - x(last[0].at_ms) < gap) last.push(point);
    else found.push([point]);
  }
  return found;
}

/** The one that lies nearest to so many pixels, no further than `reach`. */
export function nearest<T extends { at_ms: number }>(points: readonly T[], x: (ms: number) => number, px: number, reach: number): T | null {
  let best: T | null = null;
  let least = reach;
  for (const point of points) {
    const far = Math.abs(x(point.at_ms) - px);
    if (far <= least) [best, least] = [point, far];
  }
  return best;
}

/** The last one at a moment or before it. */
export function lastAt<T extends { point: { at_ms: number } }>(readings: readonly T[], ms: number): T | null {
  return readings.filter(({ point }) => point.at_ms <= ms).at(-1) ?? null;
}
