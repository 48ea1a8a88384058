import { expect, it, vi } from 'vitest';

// The module counts with the page's clock; here only its arithmetic is asked.
import { digits, elapsed, tick } from './clock.svelte';

it.each([
  [0, '0:00'],
  [999, '0:00'],
  [59_999, '0:59'],
  [60_000, '1:00'],
  [3_599_999, '59:59'],
  [3_600_000, '1:00:00'],
  [-999, '0:00'],
  [-61_000, '−1:01'],
])('%d ms is %s', (ms, text) => {
  expect(digits(ms)).toBe(text);
});

it('counts on while it runs, at its own speed, and stands otherwise', () => {
  const clock = { elapsed_ms: 5000, text: '0:05', running: true, speed: 10, certainty: 'measured' as const };
  expect(elapsed(clock, 100, 1100)).toBe(15_000);
  expect(elapsed(clock, 1100, 100)).toBe(5000);
  expect(elapsed({ ...clock, running: false }, 100, 1100)).toBe(5000);
});

it('works with every so many beats, and an answer that comes in between is no beat', () => {
  vi.useFakeTimers();
  vi.stubGlobal('document', { hidden: false, addEventListener: () => {} });
  const clock = { elapsed_ms: 5000, text: '0:05', running: true, speed: 1, certainty: 'measured' as const };
  const work = vi.fn();
  tick.align(clock, performance.now());
  const end = tick.every(3, work);
  vi.advanceTimersByTime(1500);
  const before = tick.now;
  tick.align({ ...clock, elapsed_ms: 6500 }, performance.now());
  expect(tick.now).toBe(before);
  expect(work).toHaveBeenCalledTimes(0);
  vi.advanceTimersByTime(7000);
  expect(work).toHaveBeenCalledTimes(3);
  end();
  vi.advanceTimersByTime(7000);
  expect(work).toHaveBeenCalledTimes(3);
  vi.unstubAllGlobals();
  vi.useRealTimers();
});

it('works at once when the page is seen again, and not while it is hidden', () => {
  vi.useFakeTimers();
  const page = { hidden: false, addEventListener: (_: string, seen: () => void) => (told = seen) };
  let told = (): void => {};
  vi.stubGlobal('document', page);
  const work = vi.fn();
  tick.start();
  const end = tick.every(60, work);
  page.hidden = true;
  told();
  vi.advanceTimersByTime(120_000);
  expect(work).toHaveBeenCalledTimes(0);
  page.hidden = false;
  told();
  expect(work).toHaveBeenCalledTimes(1);
  end();
  vi.unstubAllGlobals();
  vi.useRealTimers();
});
