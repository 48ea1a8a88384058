import { describe, expect, it } from 'vitest';
import type { Sketch } from '../gen/Sketch';
import { path, placeAt, spotOf } from './sketch';

const side = { view: { x: -100, y: -100, width: 200, height: 200 }, traces: [], words: [] };
const sketch: Sketch = { fetal: side, maternal: side, half_length: 95, half_breadth: 75, measured: true, notes: [] };

describe('a touch on the drawing', () => {
  it('becomes thousandths of half the disc, left and right changed on the maternal side', () => {
    expect(placeAt({ x: 95, y: -75 }, sketch, false)).toEqual({ x: 1000, y: -1000 });
    expect(placeAt({ x: 95, y: -75 }, sketch, true)).toEqual({ x: -1000, y: -1000 });
    expect(placeAt({ x: 0, y: 0 }, sketch, true)).toEqual({ x: 0, y: 0 });
  });

  it('never lies farther out than the core takes', () => {
    expect(placeAt({ x: 9000, y: -9000 }, sketch, false)).toEqual({ x: 3000, y: -3000 });
  });

  it('is drawn where it was set', () => {
    for (const maternal of [false, true]) {
      const there = spotOf(placeAt({ x: 38, y: 15 }, sketch, maternal), sketch, maternal);
      expect(there.x).toBeCloseTo(38);
      expect(there.y).toBeCloseTo(15);
    }
  });
});

it('writes an outline as SVG does', () => {
  expect(
    path([
      { to: 'move', x: 0, y: 1 },
      { to: 'line', x: 2, y: -3 },
      { to: 'curve', x1: 1, y1: 2, x2: 3, y2: 4, x: 5, y: 6 },
      { to: 'close' },
    ]),
  ).toBe('M0 1L2 -3C1 2 3 4 5 6Z');
});
