import { describe, expect, it } from 'vitest';
import type { BloodCurve } from '../gen/BloodCurve';
import { reach } from './curve';

const MARKS: BloodCurve['marks'] = [
  { volume: 300, level: 'caution' },
  { volume: 500, level: 'limit' },
  { volume: 1000, level: 'limit' },
];
const curve = (totals: [number, number][], now_ms: number): BloodCurve => ({ points: totals.map(([at_ms, total]) => ({ at_ms, total })), now_ms, marks: MARKS });

describe('how much of the blood curve is shown', () => {
  it('reaches up to the next mark, and past the last where all are reached', () => {
    expect(reach(curve([[60_000, 120]], 3_600_000)).marks.map(({ volume }) => volume)).toEqual([300]);
    expect(reach(curve([[60_000, 300]], 3_600_000)).marks.map(({ volume }) => volume)).toEqual([300, 500]);
    expect(reach(curve([[60_000, 1500]], 3_600_000)).volume).toBeGreaterThan(1500);
  });

  it('shows ten minutes at least, and blood before the birth', () => {
    expect(reach(curve([[60_000, 120]], 90_000))).toMatchObject({ fromMs: 0, toMs: 600_000 });
    expect(reach(curve([[-120_000, 50]], 1_200_000))).toMatchObject({ fromMs: -120_000, toMs: 1_200_000 });
  });

  it('draws one line where two rules have one volume, and it is the graver', () => {
    const both: BloodCurve = { ...curve([[0, 100]], 0), marks: [{ volume: 300, level: 'caution' }, { volume: 300, level: 'limit' }, { volume: 500, level: 'limit' }] };
    expect(reach({ ...both, points: [{ at_ms: 0, total: 320 }] }).marks).toEqual(both.marks.slice(1));
  });
});
