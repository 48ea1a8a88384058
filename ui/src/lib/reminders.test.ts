import { expect, it } from 'vitest';
import { Reminders } from './reminders';

it('sounds once, once more after a minute, then never', () => {
  const reminders = new Reminders();
  expect(reminders.sound([], 0)).toBe(false);
  expect(reminders.sound(['a'], 1000)).toBe(true);
  expect(reminders.sound(['a'], 60_999)).toBe(false);
  expect(reminders.sound(['a'], 61_000)).toBe(true);
  expect(reminders.sound(['a'], 200_000)).toBe(false);
});

it('does not sound what stands when the page opens', () => {
  const reminders = new Reminders();
  expect(reminders.sound(['a'], 0)).toBe(false);
  expect(reminders.sound(['a'], 70_000)).toBe(false);
});

it('sounds again for what went and came back', () => {
  const reminders = new Reminders();
  reminders.sound([], 0);
  expect(reminders.sound(['a'], 1)).toBe(true);
  expect(reminders.sound([], 2)).toBe(false);
  expect(reminders.sound(['a'], 3)).toBe(true);
});

it('sounds at most six times in an hour', () => {
  const reminders = new Reminders();
  reminders.sound([], 0);
  const keys = Array.from({ length: 9 }, (_, n) => String(n));
  const sounds = keys.map((_, n) => reminders.sound(keys.slice(0, n + 1), n + 1)).filter(Boolean);
  expect(sounds.length).toBe(6);
});
