import { expect, test } from 'vitest';
import { DeviceAlarms, systemWords, type Alarms } from './alarms';
import type { Coming } from './reminders';

const [ONE, OTHER] = ['00ff-1', '00ff-2'];
const MINUTE = 60_000;
const coming = (key: string, at: number, level: Coming['level'] = 'note'): Coming => ({ key, level, at });

function device(): { alarms: DeviceAlarms; told: Parameters<Alarms['arm']>[] } {
  const told: Parameters<Alarms['arm']>[] = [];
  return { told, alarms: new DeviceAlarms({ arm: (...what) => told.push(what) }) };
}

test('the device is told times and levels, soonest first, and never what they are of', () => {
  const { alarms, told } = device();
  alarms.set(ONE, [coming('mother-observation', 20 * MINUTE), coming('third-stage-30', 5 * MINUTE, 'limit'), coming('past', -Infinity)], MINUTE);
  expect(told.map(([birth, list]) => [birth, list])).toEqual([[ONE, [{ inMs: 4 * MINUTE, level: 'limit' }, { inMs: 19 * MINUTE, level: 'note' }]]]);
  expect(JSON.stringify(told)).not.toMatch(/mother|stage|observation/);
});

test('the words have no place for a name, and are one line each', () => {
  const words = Object.values(systemWords());
  expect(words).toHaveLength(5);
  for (const word of words) expect(word).toMatch(/^[^{}\n\t]{1,160}$/);
});

test('the same list is told once, though each answer lies a moment beside the last', () => {
  const { alarms, told } = device();
  for (const [now, drift] of [[0, 0], [5_000, 400], [10_000, -400]] as const) alarms.set(ONE, [coming('a', 10 * MINUTE + drift)], now);
  expect(told).toHaveLength(1);
  alarms.set(ONE, [coming('a', 10 * MINUTE + 1_500)], 15_000);
  alarms.set(ONE, [coming('a', 10 * MINUTE + 1_500, 'caution')], 20_000);
  expect(told).toHaveLength(3);
});

test('one that came by itself is no change; one that was called off is', () => {
  const { alarms, told } = device();
  const [first, second] = [coming('a', MINUTE), coming('b', 2 * MINUTE)];
  alarms.set(ONE, [first, second], 0);
  alarms.set(ONE, [coming('a', -Infinity), second], MINUTE + 1);
  expect(told).toHaveLength(1);
  alarms.set(ONE, [], MINUTE + 2);
  expect(told.at(-1)?.slice(0, 2)).toEqual([ONE, []]);
});

test('each birth has its own, and an earlier run of the page may have left some', () => {
  const { alarms, told } = device();
  alarms.set(ONE, [coming('a', MINUTE)], 0);
  alarms.set(OTHER, [], 0);
  alarms.set(ONE, [coming('a', MINUTE)], 0);
  expect(told.map(([birth, list]) => [birth, list.length])).toEqual([[ONE, 1], [OTHER, 0]]);
  alarms.end();
  expect(told.at(-1)?.slice(0, 2)).toEqual([null, []]);
  alarms.set(ONE, [coming('a', MINUTE)], 0);
  expect(told).toHaveLength(4);
});

test('where the device has none, nothing is done', () => {
  const alarms = new DeviceAlarms(undefined);
  alarms.set(ONE, [coming('a', MINUTE)], 0);
  alarms.end();
});
