import { expect, it } from 'vitest';
import { fromDisplay, pressKey, toDisplay } from './measure';

const type = (keys: string, kind: 'mm' | 'g'): string => keys.split('').reduce((text, key) => pressKey(text, key, kind), '');

it.each([
  ['55', 'mm', 550],
  ['55.5', 'mm', 555],
  ['55.57', 'mm', 555],
  ['5..5', 'mm', 55],
  ['.5', 'mm', 5],
  ['480', 'g', 480],
  ['4.80', 'g', 480],
  ['', 'g', null],
] as const)('%s typed as %s is %s', (keys, kind, value) => {
  expect(fromDisplay(type(keys, kind), kind)).toBe(value);
});

it('shows mm as cm', () => {
  expect(toDisplay(555, 'mm')).toBe('55.5');
  expect(toDisplay(480, 'g')).toBe('480');
});

it('deletes the last figure', () => {
  expect(pressKey('55.5', 'back', 'mm')).toBe('55.');
});
