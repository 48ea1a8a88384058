/** Least time between two things that a screen reader is told. */
const APART_MS = 10_000;

/** What a screen reader is told, and how urgently. */
export interface Told {
  words: string;
  urgent: boolean;
}

/**
 * Tells a screen reader one thing at a time, ten seconds apart at least. A notice goes before the time, waiting notices are
 * told together, and a time that is no longer the latest is not told.
 */
export class Herald {
  #notices: string[] = [];
  #time: string | null = null;
  #last = -Infinity;

  notice(words: string): void {
    this.#notices.push(words);
  }

  time(words: string): void {
    this.#time = words;
  }

  /** What is told now, if anything. */
  next(now: number): Told | null {
    if (now - this.#last < APART_MS) return null;
    const told = this.#take();
    if (told) this.#last = now;
    return told;
  }

  #take(): Told | null {
    if (this.#notices.length > 0) {
      const words = this.#notices.join('. ');
      this.#notices = [];
      return { words, urgent: true };
    }
    const words = this.#time;
    this.#time = null;
    return words === null ? null : { words, urgent: false };
  }
}

/**
 * Whether a step of a running time is a new one after the last: an answer of the core may set the clock back by a moment, and
 * no step is told twice for that. A clock that was put right by more begins anew.
 */
export function isNew(step: number, last: number): boolean {
  return step > last || step < last - 1;
}

/** Which of the steps of a running time has been reached: 0 before the first, none where there are none. */
export function stepOf(ms: number, every: number): number | null {
  return every > 0 ? Math.max(0, Math.floor(ms / every)) : null;
}
