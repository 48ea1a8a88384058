import type { Chapter } from '../gen/Chapter';

/** A chapter shorter than this was only passed on the way to another. (ours) */
const PASSED_MS = 1000;

/** How long a recording is, pauses left out, and what was looked at when. Times are `performance.now()`. */
export class Tape {
  #before = 0;
  #since: number | null;
  #chapters: Chapter[] = [];

  constructor(now: number, item: string | null) {
    this.#since = now;
    this.turn(item, now);
  }

  ms(now: number): number {
    return Math.round(this.#before + (this.#since === null ? 0 : now - this.#since));
  }

  pause(now: number): void {
    this.#before = this.ms(now);
    this.#since = null;
  }

  resume(now: number): void {
    this.#since ??= now;
  }

  /** Another item is on the screen; none goes on with the chapter that there is. */
  turn(item: string | null, now: number): void {
    const at_ms = this.ms(now);
    const last = this.#chapters.at(-1);
    if (item === null || item === last?.item) return;
    if (last && at_ms - last.at_ms < PASSED_MS) this.#chapters.pop();
    const begins = last && at_ms - last.at_ms < PASSED_MS ? last.at_ms : at_ms;
    if (this.#chapters.at(-1)?.item !== item) this.#chapters.push({ item, at_ms: begins });
  }

  /** What was looked at, in order; nothing of it lies after the end. */
  chapters(now: number): Chapter[] {
    const end = this.ms(now);
    return this.#chapters.filter(({ at_ms }) => at_ms <= end);
  }
}
