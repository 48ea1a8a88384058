import { expect, it } from 'vitest';
import type { Level } from '../gen/Level';
import { random } from './glass';
import { Reminders, type Reminder } from './reminders';

const MINUTE = 60_000;
const HOUR = 60 * MINUTE;
const note = (...keys: string[]): Reminder[] => keys.map((key) => ({ key, level: 'note' }));

it('sounds once, once more after a minute, then never', () => {
  const reminders = new Reminders();
  expect(reminders.sound([], 0)).toBe(null);
  expect(reminders.sound(note('a'), 1000)).toBe('note');
  expect(reminders.sound(note('a'), 60_999)).toBe(null);
  expect(reminders.sound(note('a'), 61_000)).toBe('note');
  expect(reminders.sound(note('a'), 200_000)).toBe(null);
});

it('sounds no second time once it was touched, and calls no more', () => {
  const reminders = new Reminders();
  reminders.sound([], 0);
  expect(reminders.sound(note('a', 'b'), 1000)).toBe('note');
  expect(reminders.calls('a', 2000)).toBe(true);
  reminders.acknowledge('a');
  expect(reminders.calls('a', 2001)).toBe(false);
  expect(reminders.calls('b', 2001)).toBe(true);
  expect(reminders.sound(note('a'), 61_000)).toBe(null);
});

it('sounds the gravest of those that come together', () => {
  const reminders = new Reminders();
  reminders.sound([], 0);
  const levels: Level[] = ['note', 'limit', 'caution'];
  expect(reminders.sound(levels.map((level) => ({ key: level, level })), 1)).toBe('limit');
});

it('does not sound what stands when the page opens', () => {
  const reminders = new Reminders();
  expect(reminders.sound(note('a'), 0)).toBe(null);
  expect(reminders.sound(note('a'), 70_000)).toBe(null);
  expect(reminders.calls('a', 1)).toBe(false);
});

it('sounds again for what was gone and came back, not for what flickered', () => {
  const reminders = new Reminders();
  reminders.sound([], 0);
  expect(reminders.sound(note('a'), 1)).toBe('note');
  reminders.sound([], 1000);
  expect(reminders.sound(note('a'), 5000)).toBe(null);
  reminders.sound([], 10_000);
  reminders.sound([], 15_000);
  expect(reminders.sound(note('a'), 21_000)).toBe('note');
});

it('is the same reminder after the page slept', () => {
  const reminders = new Reminders();
  reminders.sound([], 0);
  reminders.sound(note('a'), 1);
  reminders.sound(note('a'), 61_000);
  expect(reminders.sound(note('a'), HOUR), 'nothing was looked at in between').toBe(null);
});

it('sounds at most six times in an hour, over all births', () => {
  const sounds: number[] = [];
  const births = [new Reminders(sounds), new Reminders(sounds)];
  for (const birth of births) birth.sound([], 0);
  const keys = Array.from({ length: 5 }, (_, n) => String(n));
  const heard = births.flatMap((birth) => keys.map((_, n) => birth.sound(note(...keys.slice(0, n + 1)), n + 1))).filter(Boolean);
  expect(heard.length).toBe(6);
});

// Whatever stands, goes, flickers and is touched.
it('never sounds more than six times in any hour, and none three times', () => {
  const broken: string[] = [];
  let most = 0;
  for (let seed = 1; seed <= 2000; seed += 1) {
    const draw = random(seed);
    const reminders = new Reminders();
    const levels: Level[] = ['note', 'caution', 'limit'];
    const keys = ['a', 'b', 'c', 'd', 'e'].slice(0, 1 + Math.floor(draw() * 5));
    const standing = new Map<string, number>();
    /** Sounds that could have been of this reminder, since it began to stand. */
    const could = new Map<string, number>();
    const goneAt = new Map<string, number>();
    const heard: number[] = [];
    let now = 0;
    for (let step = 0; step < 150; step += 1) {
      now += Math.floor(draw() ** 3 * 4 * MINUTE);
      for (const key of keys) {
        if (draw() > 0.15) continue;
        if (standing.delete(key)) goneAt.set(key, now);
        else {
          standing.set(key, now);
          if (now - (goneAt.get(key) ?? -Infinity) > 10_000) could.set(key, 0);
        }
      }
      if (draw() < 0.05) reminders.acknowledge(keys[0] ?? '');
      const level = reminders.sound([...standing.keys()].map((key) => ({ key, level: levels[key.charCodeAt(0) % 3] ?? 'note' })), now);
      if (!level) continue;
      heard.push(now);
      // With one key alone it is plain whose sound it was.
      if (standing.size === 1) for (const key of standing.keys()) could.set(key, (could.get(key) ?? 0) + 1);
      const lately = heard.filter((at) => now - at < HOUR).length;
      most = Math.max(most, lately);
      if (lately > 6) broken.push(`seed ${seed}: ${lately} in an hour`);
      for (const [key, times] of could) if (times > 2) broken.push(`seed ${seed}: ${key} ${times} times`);
    }
  }
  expect(broken).toEqual([]);
  expect(most, 'the law was put to the test').toBe(6);
}, 20_000);
