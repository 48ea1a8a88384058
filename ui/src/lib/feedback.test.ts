import { expect, it } from 'vitest';
import type { Level } from '../gen/Level';
import { BUZZ, TONES } from './feedback';

const LEVELS: Level[] = ['note', 'caution', 'limit'];
const sum = (numbers: readonly number[]): number => numbers.reduce((a, b) => a + b, 0);

it('tells the three reminders apart by ear and by hand', () => {
  const [note, caution, limit] = LEVELS.map((level) => ({ on: sum(BUZZ[level].filter((_, at) => at % 2 === 0)), length: sum(BUZZ[level]), sound: sum(TONES[level].map(({ seconds }) => seconds)) }));
  for (const [less, more] of [[note, caution], [caution, limit]] as const) {
    expect(more?.on).toBeGreaterThanOrEqual((less?.on ?? 0) * 2);
    expect(more?.length).toBeGreaterThanOrEqual((less?.length ?? 0) * 2);
    expect(more?.sound).toBeGreaterThanOrEqual((less?.sound ?? 0) * 2);
  }
  const contour = (level: Level): string => TONES[level].map(({ from, to }) => `${from}-${to}`).join();
  expect(new Set(LEVELS.map(contour)).size).toBe(3);
});

it('is no melody of a monitor: one or two soft tones, begun no faster than twice a second', () => {
  for (const level of LEVELS) {
    const tones = TONES[level];
    expect(tones.length).toBeLessThanOrEqual(2);
    for (const { seconds, from, to } of tones) {
      expect(seconds).toBeGreaterThanOrEqual(0.4);
      expect(Math.max(from, to)).toBeLessThanOrEqual(520);
    }
    for (const [at, tone] of tones.entries()) expect(tone.at - (tones[at - 1]?.at ?? -1)).toBeGreaterThanOrEqual(0.5);
    const [on = 0, off = 1000] = BUZZ[level];
    expect(on + off).toBeGreaterThanOrEqual(500);
  }
});
