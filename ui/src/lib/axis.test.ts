import { describe, expect, it } from 'vitest';
import { across, clockOf, holding, lastAt, momentAcross, nearest, padded, panned, piles, pinched, ticks, zoomed } from './axis';

const MINUTE = 60_000;
const HOUR = 60 * MINUTE;
const span = (from: number, to: number) => ({ from_ms: from * MINUTE, to_ms: to * MINUTE });
/** 2026-11-25 02:41:00 on the wall. */
const ZERO = Date.UTC(2026, 10, 25, 2, 41);

describe('moments and pixels', () => {
  it('go there and back', () => {
    const x = across(span(-10, 50), 600);
    expect([x(-10 * MINUTE), x(0), x(50 * MINUTE)]).toEqual([0, 100, 600]);
    expect(momentAcross(span(-10, 50), 600, 100)).toBe(0);
  });

  it('leave room at both ends', () => {
    expect(padded(span(0, 100))).toEqual(span(-9, 109));
  });
});

describe('the labels of the axis', () => {
  const texts = (from: number, to: number, width: number, zero = ZERO) => ticks(span(from, to), width, zero).map(({ text }) => text);

  it('stand at round times of the wall, not of the birth', () => {
    expect(texts(-1, 40, 600)).toEqual(['02:40', '02:45', '02:50', '02:55', '03:00', '03:05', '03:10', '03:15', '03:20']);
    expect(ticks(span(-1, 40), 600, ZERO)[1]?.ms).toBe(4 * MINUTE);
  });

  it('are fewer where there is less room, and never crowd', () => {
    expect(texts(0, 60, 200)).toEqual(['03:00', '03:30']);
    for (const width of [200, 411, 700, 1200]) {
      for (const wide of [2, 13, 61, 400, 5000]) {
        const found = ticks(span(0, wide), width, ZERO);
        expect(found.length).toBeLessThanOrEqual(width / 72 + 1);
      }
    }
  });

  it('have seconds where they are close, and a date where a day begins', () => {
    expect(texts(0, 2, 600)).toContain('02:41:30');
    expect(texts(0, 24 * 60, 400, Date.UTC(2026, 10, 25, 20, 0))).toContain('11-26');
  });
});

describe('closer, wider and along', () => {
  const whole = span(-10, 110);

  it('keeps the moment where it is', () => {
    const window = zoomed(span(0, 100), 2, 40 * MINUTE, whole);
    expect(window).toEqual(span(20, 70));
    expect(across(window, 600)(40 * MINUTE)).toBe(across(span(0, 100), 600)(40 * MINUTE));
  });

  it('has an end on both sides', () => {
    expect(zoomed(span(0, 100), 0.1, 40 * MINUTE, whole)).toEqual(whole);
    const close = zoomed(span(0, 3), 100, 0, whole);
    expect(close.to_ms - close.from_ms).toBe(2 * MINUTE);
    expect(panned(span(80, 110), 1, whole)).toEqual(span(80, 110));
    expect(panned(span(0, 20), -1, whole)).toEqual(span(-10, 10));
  });

  it('moves to hold a moment only where it is outside', () => {
    const first = padded(span(0, 40));
    expect(holding(first, 0, whole)).toBe(first);
    expect(holding(span(0, 50), 25 * MINUTE, whole)).toEqual(span(0, 50));
    expect(holding(span(0, 50), 60 * MINUTE, whole)).toEqual(span(12.25, 62.25));
    expect(holding(span(0, 50), -5 * MINUTE, whole)).toEqual(span(-7.25, 42.75));
  });
});

describe('entries close together', () => {
  const points = [0, 10, 20, 45, 200].map((px) => ({ at_ms: px * 1000 }));
  const x = (ms: number): number => ms / 1000;

  it('lie on a pile with the first of them, and none is lost', () => {
    expect(piles(points, x, 30).map((pile) => pile.map(({ at_ms }) => at_ms / 1000))).toEqual([[0, 10, 20], [45], [200]]);
  });

  it('are found by the nearest, within reach', () => {
    expect(nearest(points, x, 30, 24)?.at_ms).toBe(20_000);
    expect(nearest(points, x, 120, 48)).toBeNull();
  });
});

it('a reading stands until the next one, and not before the first', () => {
  const readings = [5, 10].map((minute) => ({ point: { at_ms: minute * MINUTE } }));
  expect(lastAt(readings, 4 * MINUTE)).toBeNull();
  expect(lastAt(readings, 9 * MINUTE)).toBe(readings[0]);
  expect(lastAt(readings, HOUR)).toBe(readings[1]);
});

it('clocks are told from the local time, also before 1970', () => {
  expect([clockOf(ZERO), clockOf(ZERO + 5000, true), clockOf(-MINUTE)]).toEqual(['02:41', '02:41:05', '23:59']);
});

describe('two fingers', () => {
  const whole = span(0, 100);
  const at = (...xs: [number, number]) => xs.map((x) => ({ x, y: 50 })) as [{ x: number; y: number }, { x: number; y: number }];

  it('look twice as closely when they are twice as far apart, about what lies between them', () => {
    expect(pinched(whole, 400, at(100, 200), at(50, 250), whole)).toEqual(span(18.75, 68.75));
    expect(pinched(span(18.75, 68.75), 400, at(50, 250), at(100, 200), whole)).toEqual(whole);
  });

  it('move along what they hold', () => {
    expect(pinched(span(20, 60), 400, at(100, 200), at(150, 250), whole)).toEqual(span(15, 55));
  });

  it('never look past all there is, nor closer than two minutes', () => {
    expect(pinched(span(20, 60), 400, at(100, 300), at(199, 201), whole)).toEqual(whole);
    const close = pinched(span(20, 60), 400, at(199, 201), at(0, 400), whole);
    expect(close.to_ms - close.from_ms).toBe(2 * MINUTE);
  });
});
