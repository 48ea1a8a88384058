import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { ApiError } from './transport';
import { wait } from './wait.svelte';

beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  vi.advanceTimersByTime(61_000);
  vi.useRealTimers();
});

it('counts down what the core said, and ends', () => {
  wait.take(new ApiError('wait', { id: 'error-wait', args: { seconds: 4 } }));
  const seen = [wait.left];
  for (let n = 0; n < 4; n += 1) {
    vi.advanceTimersByTime(1000);
    seen.push(wait.left);
  }
  expect(seen).toEqual([4, 3, 2, 1, 0]);
});

it('begins with the wrong try that makes the next one wait', () => {
  wait.take(new ApiError('wrong_passphrase', { id: 'error-wrong-passphrase', args: { wait: 60 } }));
  expect(wait.left).toBe(60);
});

it('does not wait after another failure, nor after a wrong try that is free', () => {
  wait.take(new ApiError('wrong_passphrase', { id: 'error-wrong-passphrase' }));
  wait.take(new ApiError('not_saved', { id: 'error-full', args: { wait: 9 } }));
  expect(wait.left).toBe(0);
});

it('ends when the device slept through it', () => {
  wait.take(new ApiError('wait', { id: 'error-wait', args: { seconds: 30 } }));
  vi.setSystemTime(Date.now() + 31_000);
  vi.advanceTimersByTime(200);
  expect(wait.left).toBe(0);
});
