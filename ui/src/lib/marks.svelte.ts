import { SvelteMap } from 'svelte/reactivity';
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
  /** The facts that are on their way to the disk, by their keys, and when each was touched. */
  readonly saving = new SvelteMap<string, number>();
  /** The mark just made, with its time. */
  made = $state<{ key: string; clock: string } | null>(null);
  /** The buttons as they stand on the screen. */
  next = $state.raw<NextMark[]>([]);

  #told: NextMark[] = [];
  /** When the latest mark was touched. */
  #latest = -Infinity;
  #undoTimer: ReturnType<typeof setTimeout> | undefined;
  #settleTimer: ReturnType<typeof setTimeout> | undefined;

  /** A mark of this key was touched, and none of it is on its way. */
  protected begins(key: string, touched: number): void {
    this.saving.set(key, touched);
    this.#latest = touched;
    // From here on an undo would mean this mark, not the one before.
    this.undo = null;
  }

  /** The mark of this key is on disk, or was refused. */
  protected ends(key: string): void {
    this.saving.delete(key);
    this.#show();
  }

  /** Whether no other mark was touched since: only the latest can be taken back. */
  protected isLatest(touched: number): boolean {
    return this.#latest === touched;
  }

  /** Ten seconds in which one touch takes the mark back. */
  protected offer(undo: U): void {
    clearTimeout(this.#undoTimer);
    this.undo = undo;
    this.#undoTimer = setTimeout(() => (this.undo = null), UNDO_MS);
  }

  /** Takes the buttons that the core tells; they show once the screen has settled. */
  protected tell(next: NextMark[]): void {
    this.#told = next;
    this.#show();
  }

  /** No button moves under a finger: not while one says that it is being saved, nor right after a mark. */
  #show(): void {
    if (this.#settleTimer === undefined && this.saving.size === 0) this.next = this.#told;
  }

  /** The buttons keep their places for a moment. */
  protected settle(): void {
    clearTimeout(this.#settleTimer);
    this.#settleTimer = setTimeout(() => {
      this.#settleTimer = undefined;
      this.made = null;
      this.#show();
    }, SETTLE_MS);
  }

  /** Ends what was still to come by itself. */
  protected still(): void {
    clearTimeout(this.#undoTimer);
    clearTimeout(this.#settleTimer);
    this.#settleTimer = undefined;
  }
}
