import { expect, it } from 'vitest';
import { themeOf } from './light';

const noon = { dark: false, hour: 12, lux: null };

it('is night from eight in the evening to seven in the morning', () => {
  const themes = [6, 7, 19, 20, 23, 0].map((hour) => themeOf('auto', { ...noon, hour }));
  expect(themes).toEqual(['night', 'day', 'day', 'night', 'night', 'night']);
});

it('is night where the system is dark, or the room', () => {
  expect(themeOf('auto', { ...noon, dark: true })).toBe('night');
  expect(themeOf('auto', { ...noon, lux: 9.9 })).toBe('night');
  expect(themeOf('auto', { ...noon, lux: 10 })).toBe('day');
});

it('is what was chosen by hand, and red only so', () => {
  for (const hour of [0, 12]) for (const dark of [true, false]) {
    for (const chosen of ['day', 'night', 'red'] as const) expect(themeOf(chosen, { dark, hour, lux: 0 })).toBe(chosen);
    expect(themeOf('auto', { dark, hour, lux: 0 })).not.toBe('red');
  }
});
