import type { BirthId } from '../gen/BirthId';
import type { ClockView } from '../gen/ClockView';
import { systemWords, type SystemWords } from './alarms';
import { elapsed } from './clock.svelte';
import { given } from './ports';

/** A running clock on the locked screen, with the name of the program and nothing else. */
export interface LockScreen {
  /** One that began so many milliseconds ago, in place of another. */
  run: (sinceMs: number, words: SystemWords) => void;
  stop: (words: SystemWords) => void;
}

/** A start that moved by less is the same. (ours) */
const SAME_MS = 2000;

/** The one clock there. It belongs to a birth, or to what was marked while the practice was locked. */
export class LockedClock {
  readonly #port: LockScreen | undefined;
  /** Whose it is, and when it began by `performance.now()`. Before the first answer it may be there from an earlier run. */
  #shown: { of: BirthId | null; start: number } | null | undefined;

  constructor(port: LockScreen | undefined) {
    this.#port = port;
  }

  /** How the third stage of a birth stands; without a birth, as it is known while the practice is locked. */
  show(of: BirthId | null, clock: ClockView | null, arrival: number, now: number): void {
    if (!this.#port) return;
    if (clock?.running) {
      const since = elapsed(clock, arrival, now);
      const start = now - since;
      const same = this.#shown && Math.abs(this.#shown.start - start) < SAME_MS;
      this.#shown = { of: of ?? this.#shown?.of ?? null, start: same && this.#shown ? this.#shown.start : start };
      if (!same) this.#port.run(Math.round(since), systemWords());
      return;
    }
    const anothers = this.#shown && of !== null && this.#shown.of !== null && this.#shown.of !== of;
    // A practice that was locked before anything was marked knows of no clock; one may run.
    if (this.#shown === null || anothers || (of === null && clock === null)) return;
    this.#shown = null;
    this.#port.stop(systemWords());
  }

  /** There is no practice any more. */
  end(): void {
    this.#shown = null;
    this.#port?.stop(systemWords());
  }
}

export const lockedClock = new LockedClock(given('lockScreen'));
