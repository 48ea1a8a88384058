import { expect, test } from 'vitest';
import { evenly } from './outline';

test('a drawn line becomes points that lie evenly on it', () => {
  const square = [0, 1, 2, 3].map((corner) => ({ x: corner === 1 || corner === 2 ? 1000 : 0, y: corner > 1 ? 1000 : 0 }));
  const points = evenly(square, 8);
  expect(points).toEqual([
    { x: 0, y: 0 },
    { x: 500, y: 0 },
    { x: 1000, y: 0 },
    { x: 1000, y: 500 },
    { x: 1000, y: 1000 },
    { x: 500, y: 1000 },
    { x: 0, y: 1000 },
    { x: 0, y: 500 },
  ]);
});

test('a line without any length makes no points beyond its own', () => {
  expect(evenly([], 5)).toEqual([]);
  expect(evenly([{ x: 3, y: 4 }], 5)).toEqual([]);
});
