import { settings } from './settings.svelte';

const LOOK_MS = 2000;
const MINUTE_MS = 60_000;
const TOUCHES = ['pointerdown', 'pointermove', 'keydown', 'wheel'] as const;

/** Watches for the time in which nobody touches. */
class Rest {
  #running = 0;
  #wall = 0;
  #over: (() => void) | undefined;

  /** Counts from now on. */
  stir(): void {
    this.#running = performance.now();
    this.#wall = Date.now();
  }

  /** Tells each time that nobody has touched for as long as the settings say; gives a way to end the watch. */
  watch(over: () => void): () => void {
    this.#over = over;
    this.stir();
    const timer = setInterval(this.#look, LOOK_MS);
    document.addEventListener('visibilitychange', this.#look);
    for (const touch of TOUCHES) window.addEventListener(touch, this.#touched, { capture: true, passive: true });
    return () => {
      clearInterval(timer);
      document.removeEventListener('visibilitychange', this.#look);
      for (const touch of TOUCHES) window.removeEventListener(touch, this.#touched, { capture: true });
    };
  }

  // The running clock of a page may stand still while the device sleeps, so the one that is further counts.
  #look = (): void => {
    const idle = Math.max(performance.now() - this.#running, Date.now() - this.#wall);
    if (idle < settings.restAfter * MINUTE_MS) return;
    this.stir();
    this.#over?.();
  };

  // The first touch after a sleep comes before the timer does.
  #touched = (): void => {
    this.#look();
    this.stir();
  };
}

export const rest = new Rest();
