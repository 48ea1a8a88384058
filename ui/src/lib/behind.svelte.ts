import { untrack } from 'svelte';

/** A value that lags by a frame: what a thumb waits for is drawn first, and what stands further down in a turn of its own. */
export class Behind<T> {
  now: T = $state.raw() as T;

  /** Made where effects may be made: as a component begins. */
  constructor(value: () => T) {
    this.now = untrack(value);
    $effect(() => {
      const next = value();
      if (next === untrack(() => this.now)) return;
      let turn: ReturnType<typeof setTimeout> | undefined;
      const frame = requestAnimationFrame(() => (turn = setTimeout(() => (this.now = next))));
      return () => {
        cancelAnimationFrame(frame);
        clearTimeout(turn);
      };
    });
  }
}
