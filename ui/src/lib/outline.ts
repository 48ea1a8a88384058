import type { Pixel } from '../gen/Pixel';

/** Points that a drawn line is made into. */
export const OUTLINE_POINTS = 36;

/** A closed line as so many points, one as far from the next as another. */
export function evenly(line: Pixel[], count: number): Pixel[] {
  const closed = [...line, ...line.slice(0, 1)];
  const lengths = closed.slice(1).map((to, at) => Math.hypot(to.x - (closed[at]?.x ?? 0), to.y - (closed[at]?.y ?? 0)));
  const step = lengths.reduce((sum, length) => sum + length, 0) / count;
  const points: Pixel[] = [];
  let walked = 0;
  for (const [at, length] of lengths.entries()) {
    const [from, to] = [closed[at], closed[at + 1]];
    if (!from || !to) break;
    while (points.length < count && points.length * step <= walked + length && length > 0) {
      const share = (points.length * step - walked) / length;
      points.push({ x: Math.round(from.x + share * (to.x - from.x)), y: Math.round(from.y + share * (to.y - from.y)) });
    }
    walked += length;
  }
  return points;
}
