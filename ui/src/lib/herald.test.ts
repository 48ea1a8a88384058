import { expect, it } from 'vitest';
import { Herald, isNew, stepOf } from './herald';

it('tells one thing at a time, ten seconds apart, notices first and together', () => {
  const herald = new Herald();
  herald.time('one minute');
  expect(herald.next(0)).toEqual({ words: 'one minute', urgent: false });
  herald.time('two minutes');
  herald.notice('a');
  herald.notice('b');
  expect(herald.next(9_999)).toBe(null);
  expect(herald.next(10_000)).toEqual({ words: 'a. b', urgent: true });
  herald.time('three minutes');
  expect(herald.next(20_000), 'the time that is past is not told').toEqual({ words: 'three minutes', urgent: false });
  expect(herald.next(40_000)).toBe(null);
});

it('tells no step twice where the clock goes back by a moment', () => {
  expect([isNew(3, 2), isNew(2, 2), isNew(1, 2), isNew(0, 2)]).toEqual([true, false, false, true]);
});

it('counts steps of a running time', () => {
  expect([-1, 0, 29_999, 30_000, 61_000].map((ms) => stepOf(ms, 30_000))).toEqual([0, 0, 0, 1, 2]);
  expect(stepOf(61_000, 0)).toBe(null);
});
