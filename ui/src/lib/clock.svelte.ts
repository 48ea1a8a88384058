import type { ClockView } from '../gen/ClockView';

/** Milliseconds past the full second at which the digits flip, so that a late answer does not show one second twice. */
const AFTER = 40;

/** One tick a second for every clock on the page. The page owns no time: it only counts on from the core's answer. */
class Tick {
  /** `performance.now()` at the last tick. */
  now = $state(performance.now());
  #anchor = { elapsed: 0, arrival: 0 };
  #timer: ReturnType<typeof setTimeout> | undefined;
  /** What is done with every so many beats, and in how many beats it is done next. */
  readonly #works = new Map<() => void, { beats: number; left: number }>();

  start(): void {
    document.addEventListener('visibilitychange', this.#seen);
    this.#beat();
  }

  /**
   * Does this with every so many beats, so that the phone wakes once for both, and when the page is seen again, since its own
   * counting may stand still while the phone sleeps. Gives a way to end it.
   */
  every(beats: number, work: () => void): () => void {
    this.#works.set(work, { beats, left: beats });
    return () => this.#works.delete(work);
  }

  /** Lets the digits flip with this clock. */
  align(clock: ClockView | null, arrival: number): void {
    if (clock) this.#anchor = { elapsed: clock.elapsed_ms, arrival };
    this.#wait();
  }

  #seen = (): void => {
    if (!document.hidden) for (const turn of this.#works.values()) turn.left = 1;
    this.#beat();
  };

  #beat = (): void => {
    this.now = performance.now();
    this.#wait();
    if (document.hidden) return;
    for (const [work, turn] of this.#works) {
      turn.left -= 1;
      if (turn.left > 0) continue;
      turn.left = turn.beats;
      work();
    }
  };

  /** Until the digits flip next. */
  #wait(): void {
    clearTimeout(this.#timer);
    if (document.hidden) return;
    const into = (this.#anchor.elapsed + performance.now() - this.#anchor.arrival - AFTER) % 1000;
    this.#timer = setTimeout(this.#beat, 1000 - ((into + 1000) % 1000));
  }
}

export const tick = new Tick();

/** Milliseconds that a clock stands at, so many after its answer came. */
export function elapsed(clock: ClockView, arrival: number, now: number): number {
  return clock.running ? clock.elapsed_ms + Math.max(0, now - arrival) * clock.speed : clock.elapsed_ms;
}

/** `m:ss` up to an hour, then `h:mm:ss`; a minus sign before the start. */
export function digits(ms: number): string {
  const sign = ms <= -1000 ? '−' : '';
  const seconds = Math.floor(Math.abs(ms) / 1000);
  const two = (value: number): string => String(value).padStart(2, '0');
  const hours = Math.floor(seconds / 3600);
  const minutes = Math.floor(seconds / 60) % 60;
  const tail = two(seconds % 60);
  return hours > 0 ? `${sign}${hours}:${two(minutes)}:${tail}` : `${sign}${minutes}:${tail}`;
}
