import { untrack } from 'svelte';

/**
 * A value that lags by a frame where its `version` changes: what a thumb waits for is drawn first, and what stands further down
 * in a turn of its own. What only counts on is drawn with the rest, so that the phone draws once for both.
 */
export class Behind<T> {
  now: T = $state.raw() as T;

  /** Made where effects may be made: as a component begins. */
  constructor(value: () => T, version: (of: T) => unknown) {
    this.now = untrack(value);
    $effect(() => {
      const next = value();
      if (version(next) === untrack(() => version(this.now))) {
        this.now = next;
        return;
      }
      let turn: ReturnType<typeof setTimeout> | undefined;
      const frame = requestAnimationFrame(() => (turn = setTimeout(() => (this.now = next))));
      return () => {
        cancelAnimationFrame(frame);
        clearTimeout(turn);
      };
    });
  }
}
