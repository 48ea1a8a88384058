import { expect, test } from 'vitest';
import type { ClockView } from '../gen/ClockView';
import { LockedClock } from './lockscreen';

const [ONE, OTHER] = ['00ff-1', '00ff-2'];
const clock = (elapsed_ms: number, running = true): ClockView => ({ elapsed_ms, text: '', running, speed: 1, certainty: 'measured' });

function screen(): { locked: LockedClock; told: (number | 'stop')[] } {
  const told: (number | 'stop')[] = [];
  return { told, locked: new LockedClock({ run: (since) => told.push(since), stop: () => told.push('stop') }) };
}

test('it runs from the birth of the baby, and is told once', () => {
  const { locked, told } = screen();
  locked.show(ONE, clock(3_000), 100, 100);
  locked.show(ONE, clock(8_100), 5_100, 5_100);
  expect(told).toEqual([3_000]);
  // The time of the birth was put right.
  locked.show(ONE, clock(63_100), 10_100, 10_100);
  expect(told).toEqual([3_000, 63_100]);
});

test('it ends with the third stage, once', () => {
  const { locked, told } = screen();
  locked.show(ONE, clock(0), 0, 0);
  locked.show(ONE, clock(600_000, false), 600_000, 600_000);
  locked.show(ONE, clock(600_000, false), 605_000, 605_000);
  expect(told).toEqual([0, 'stop']);
});

test('one that an earlier run of the page left is taken away', () => {
  const { locked, told } = screen();
  locked.show(ONE, null, 0, 0);
  locked.show(ONE, null, 5_000, 5_000);
  expect(told).toEqual(['stop']);
});

test('another birth does not end it, but may have its own', () => {
  const { locked, told } = screen();
  locked.show(ONE, clock(0), 0, 0);
  locked.show(OTHER, null, 1_000, 1_000);
  expect(told).toEqual([0]);
  locked.show(OTHER, clock(0), 60_000, 60_000);
  locked.show(ONE, clock(70_000, false), 70_000, 70_000);
  expect(told).toEqual([0, 0]);
});

test('while the practice is locked it goes on, and what is marked there begins or ends it', () => {
  const { locked, told } = screen();
  locked.show(ONE, clock(0), 0, 0);
  locked.show(null, null, 1_000, 1_000);
  locked.show(null, clock(2_000), 2_000, 2_000);
  expect(told).toEqual([0]);
  locked.show(null, clock(3_000, false), 3_000, 3_000);
  expect(told).toEqual([0, 'stop']);
  locked.show(null, clock(0), 90_000, 90_000);
  locked.show(OTHER, clock(1_000, false), 95_000, 95_000);
  expect(told).toEqual([0, 'stop', 0, 'stop']);
});
