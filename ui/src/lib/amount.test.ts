import { describe, expect, it } from 'vitest';
import { age, size } from './amount';
import { base64 } from './upload';
import { say } from './words';

describe('a size in words', () => {
  it('is whole kB below 1 MB, and never nothing', () => {
    expect(say(size(0))).toBe('1 kB');
    expect(say(size(412_499))).toBe('412 kB');
  });

  it('is MB with one place from there on', () => {
    expect(say(size(1_000_000))).toBe('1 MB');
    expect(say(size(3_249_000))).toBe('3.2 MB');
  });
});

describe('the age of a backup', () => {
  const now = new Date(2026, 10, 25, 0, 5);

  it('counts calendar days, not hours', () => {
    expect(say(age('2026-11-25 00:01', now))).toBe('today');
    expect(say(age('2026-11-24 23:59', now))).toBe('yesterday');
    expect(say(age('2026-10-25 12:00', now))).toBe('31 days ago');
  });

  it('tells the date where the clock was set back since', () => {
    expect(say(age('2026-11-26 03:12', now))).toBe('on 26 Nov 2026 03:12');
  });
});

describe('base64', () => {
  it('holds every byte of a part that is longer than one chunk', () => {
    const bytes = Uint8Array.from({ length: 100_001 }, (_, at) => (at * 7) % 256);
    expect(base64(bytes)).toBe(Buffer.from(bytes).toString('base64'));
  });
});
