import type { NextMark } from '../gen/NextMark';

/** How long a mark can be undone with one touch. */
const UNDO_MS = 10_000;
/** How long the buttons keep their places after a mark, so that no second touch meets another button. */
const SETTLE_MS = 1200;

/** What can be taken back, in the words of the screen. */
export interface Undo {
  what: string;
  clock: string;
}

/** Mark buttons on a screen, what was just made with them, and what can be taken back. */
export class Marks<U extends Undo> {
  undo = $state<U | null>(null);
  /** Key of the fact that is on its way to the disk. */
  saving = $state<string | null>(null);
  /** The mark just made, with its time. */
  made = $state<{ key: string; clock: string } | null>(null);
  /** The buttons as they stand on the screen. */
  next = $state.raw<NextMark[]>([]);

  #told: NextMark[] = [];
  #undoTimer: ReturnType<typeof setTimeout> | undefined;
  #settleTimer: ReturnType<typeof setTimeout> | undefined;

  /** Ten seconds in which one touch takes the mark back. */
  protected offer(undo: U): void {
    clearTimeout(this.#undoTimer);
    this.undo = undo;
    this.#undoTimer = setTimeout(() => (this.undo = null), UNDO_MS);
  }

  /** Takes the buttons that the core tells; they show once the screen has settled. */
  protected tell(next: NextMark[]): void {
    this.#told = next;
    if (!this.#settleTimer) this.next = next;
  }

  /** The buttons keep their places for a moment. */
  protected settle(): void {
    clearTimeout(this.#settleTimer);
    this.#settleTimer = setTimeout(() => {
      this.#settleTimer = undefined;
      this.made = null;
      this.next = this.#told;
    }, SETTLE_MS);
  }

  /** Ends what was still to come by itself. */
  protected still(): void {
    clearTimeout(this.#undoTimer);
    clearTimeout(this.#settleTimer);
    this.#settleTimer = undefined;
  }
}
