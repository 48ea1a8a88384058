/** Under water a contact counts only after it has lasted. */
export const WET_MS = 80;
const WET_CONTACTS = 3;
const WET_STARTS = 4;
const WET_WINDOW_MS = 500;
const BURST_WINDOW_MS = 5000;
const BURSTS = 3;

interface Start {
  id: number;
  at: number;
  on: EventTarget | null;
}

/** Water on the glass: many contacts at once, or many starts in a short time. */
class Water {
  #down = new Set<number>();
  #starts: Start[] = [];
  #wetUntil = -Infinity;
  #bursts: number[] = [];
  /** Told when three bursts came within five seconds. */
  flooded: (() => void) | undefined;

  wet(): boolean {
    return performance.now() < this.#wetUntil || this.#down.size >= WET_CONTACTS;
  }

  /**
   * Whether another contact than this began within so many ms of it, off its button where one is named: one thumb is not in
   * two places at once.
   */
  others(id: number, at: number, within: number, button: Node | null): boolean {
    const near = this.#starts.filter((start) => Math.abs(start.at - at) <= within && !(start.id === id && start.at === at));
    return near.some((start) => !button?.contains(start.on as Node | null));
  }

  /** Watches the glass from now on, and takes it for dry; gives what ends that. */
  watch(): () => void {
    this.#down.clear();
    this.#starts = [];
    this.#bursts = [];
    this.#wetUntil = -Infinity;
    const start = (event: PointerEvent): void => {
      if (event.pointerType !== 'touch') return;
      const now = event.timeStamp;
      this.#down.add(event.pointerId);
      this.#starts = [...this.#starts.filter(({ at }) => now - at < WET_WINDOW_MS), { id: event.pointerId, at: now, on: event.target }];
      if (this.#down.size < WET_CONTACTS && this.#starts.length < WET_STARTS) return;
      if (now > this.#wetUntil) this.#burst(now);
      this.#wetUntil = now + WET_WINDOW_MS;
    };
    const end = (event: PointerEvent): void => {
      this.#down.delete(event.pointerId);
    };
    window.addEventListener('pointerdown', start, true);
    window.addEventListener('pointerup', end, true);
    window.addEventListener('pointercancel', end, true);
    return () => {
      window.removeEventListener('pointerdown', start, true);
      window.removeEventListener('pointerup', end, true);
      window.removeEventListener('pointercancel', end, true);
    };
  }

  #burst(now: number): void {
    this.#bursts = [...this.#bursts.filter((at) => now - at < BURST_WINDOW_MS), now];
    if (this.#bursts.length < BURSTS) return;
    this.#bursts = [];
    this.flooded?.();
  }
}

export const water = new Water();
