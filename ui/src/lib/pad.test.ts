import { expect, it } from 'vitest';
import { padKey, shownAs, type PadField, type PadState } from './pad';

type Key = 'pulse' | 'systolic' | 'breaths' | 'temperature';
const FIELDS: PadField<Key>[] = [
  { key: 'pulse', label: '', unit: '', most: 300 },
  { key: 'systolic', label: '', unit: '', most: 300 },
  { key: 'breaths', label: '', unit: '', most: 120 },
  { key: 'temperature', label: '', unit: '', most: 450, decimals: 1 },
];
const START: PadState<Key> = { values: { pulse: null, systolic: null, breaths: null, temperature: null }, place: 0, fresh: true };
const type = (keys: string[], from = START): PadState<Key> => keys.reduce((state, key) => padKey(state, FIELDS, key), from);

it('moves on by itself once no further figure fits', () => {
  const { values, place } = type([...'84', ...'118', ...'16', ...'368']);
  expect(values).toEqual({ pulse: 84, systolic: 118, breaths: 16, temperature: 368 });
  expect(place).toBe(3);
});

it('waits while one more figure can follow, and is moved on by hand', () => {
  expect(type([...'12']).place).toBe(0);
  expect(type([...'12', 'next', ...'90']).values).toMatchObject({ pulse: 12, systolic: 90 });
});

it('keeps a field within what the core takes', () => {
  expect(type([...'12', '9', '9']).values).toMatchObject({ pulse: 129, systolic: 9 });
  expect(type([...'451'], { ...START, place: 3 }).values.temperature).toBe(45);
});

it('begins anew in a field that holds a value', () => {
  const held = { ...START, values: { ...START.values, pulse: 84 } };
  expect(type(['9'], held).values.pulse).toBe(9);
});

it('deletes a figure, then goes back to the field before', () => {
  const state = type([...'84', 'back', 'back']);
  expect(state).toMatchObject({ place: 0, values: { pulse: 8 } });
  expect(type(['back'], state).values.pulse).toBeNull();
});

it('shows tenths with their point', () => {
  expect(shownAs(368, FIELDS[3]!)).toBe('36.8');
  expect(shownAs(84, FIELDS[0]!)).toBe('84');
  expect(shownAs(null, FIELDS[0]!)).toBe('');
});
