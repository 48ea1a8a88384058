import { beforeEach, expect, test, vi } from 'vitest';
import { notSaved } from './failures.svelte';
import { sheetWriter } from './here';
import { ApiError } from './transport';

let leave: () => void;
vi.mock('svelte', async (original) => ({ ...(await original<typeof import('svelte')>()), onDestroy: (gone: () => void) => (leave = gone) }));
vi.mock('./feedback', () => ({ feel: vi.fn() }));

const FULL = new ApiError('not_saved', { id: 'error-full' });

beforeEach(() => {
  notSaved.list = [];
});

test.each([['with something after it', true], ['with nothing after it', false]])('what was refused after the sheet was left is written at a second try, %s', async (_, more) => {
  const [close, refused, after] = [vi.fn(), vi.fn(), vi.fn(() => Promise.resolve())];
  const write = vi.fn(() => Promise.resolve('entry')).mockImplementationOnce(() => Promise.reject(FULL));
  const writing = sheetWriter(close, refused)({ what: 'Note', write, ...(more ? { after } : {}) });
  leave();
  await writing;
  expect([close, refused, after].map((one) => one.mock.calls.length)).toEqual([0, 0, 0]);
  const [failure] = notSaved.list;
  expect([failure?.what, failure?.error]).toEqual(['Note', FULL]);

  if (failure) await notSaved.retry(failure);
  expect(write).toHaveBeenCalledTimes(2);
  expect(after.mock.calls).toEqual(more ? [['entry']] : []);
  expect(notSaved.list).toEqual([]);
});

test('what is refused while the sheet is there is told in it, and what is written closes it', async () => {
  const [close, refused] = [vi.fn(), vi.fn()];
  const finish = sheetWriter(close, refused);
  await finish({ what: 'Note', write: () => Promise.reject(FULL) });
  expect([refused.mock.calls, close.mock.calls, notSaved.list]).toEqual([[[FULL]], [], []]);
  await finish({ what: 'Note', write: () => Promise.resolve() });
  expect(close).toHaveBeenCalledTimes(1);
});
