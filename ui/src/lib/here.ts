import { onDestroy } from 'svelte';
import type { Request } from '../gen/Request';
import { notSaved } from './failures.svelte';
import { feel } from './feedback';
import { asApiError, type ApiError } from './transport';

export interface Writing<T> {
  /** Its name in words. */
  what: string;
  /** Done once it is on disk. The chart is read anew only after it, since that may take the sheet away. */
  write: () => Promise<T>;
  after?: (written: T) => Promise<void>;
  /** For where it can be kept elsewhere. */
  order?: () => Request;
}

/** Tells whether the component that asks at its making is still on the screen: an answer may come after it was left. */
export function stillHere(): () => boolean {
  let here = true;
  onDestroy(() => (here = false));
  return () => here;
}

/**
 * Writes for a sheet that may be left before the answer comes. An answer then closes nothing more, and what was refused is
 * told with what is not saved, where it can be tried again.
 */
export function sheetWriter(close: () => void, refused: (error: ApiError) => void): <T>(writing: Writing<T>) => Promise<void> {
  const here = stillHere();
  return async ({ what, write, after, order }) => {
    let written;
    try {
      written = await write();
    } catch (cause) {
      feel('failed');
      const error = asApiError(cause);
      if (here()) return refused(error);
      const again = async (): Promise<void> => {
        const later = await write();
        await after?.(later);
      };
      return notSaved.add(what, error, again, order);
    }
    if (here()) close();
    await after?.(written);
  };
}
