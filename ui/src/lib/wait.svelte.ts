import type { ApiError } from './transport';

const BEAT_MS = 200;

/** The time until the next passphrase may be tried, counted down from what the core said. The core decides. */
class Wait {
  /** Whole seconds left; 0 when a try may be made. */
  left = $state(0);
  #until = { running: 0, wall: 0 };
  #timer: ReturnType<typeof setInterval> | undefined;

  /** Takes the wait out of an error, where there is one. */
  take(error: ApiError): void {
    const seconds = error.said.args?.[error.code === 'wait' ? 'seconds' : 'wait'];
    if (typeof seconds !== 'number' || (error.code !== 'wait' && error.code !== 'wrong_passphrase')) return;
    this.#until = { running: performance.now() + seconds * 1000, wall: Date.now() + seconds * 1000 };
    clearInterval(this.#timer);
    this.#timer = setInterval(this.#beat, BEAT_MS);
    this.#beat();
  }

  // The running clock of a page may stand still while the device sleeps, so the one that is further counts.
  #beat = (): void => {
    const left = Math.min(this.#until.running - performance.now(), this.#until.wall - Date.now());
    this.left = Math.max(0, Math.ceil(left / 1000));
    if (this.left === 0) clearInterval(this.#timer);
  };
}

export const wait = new Wait();
