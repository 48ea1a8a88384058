import type { SyncState } from '../gen/SyncState';
import type { SyncView } from '../gen/SyncView';
import { tick } from './clock.svelte';
import { metered } from './device';
import { asApiError, ask } from './transport';
import { say } from './words';

/** Seconds between two questions whether a round is due (ours). The core keeps to its pauses. */
const ROUND_S = 60;
/** How often it is looked at while somebody looks, ms. */
const LOOK_MS = 700;

export type Going = Extract<SyncState, { state: 'going' }>;

/** How the phones of the practice share: asked for, and exchanged by itself. */
class Sharing {
  view = $state.raw<SyncView | null>(null);
  /** What was asked for and refused, in words. */
  error = $state<string | null>(null);
  readonly going = $derived(this.view?.state.state === 'going' ? this.view.state : null);

  /** Asks for something; what went wrong stays until something else is asked for. */
  async run(work: Promise<SyncView>): Promise<boolean> {
    this.error = null;
    try {
      this.view = await work;
      return true;
    } catch (cause) {
      this.error = say(asApiError(cause).said);
      return false;
    }
  }

  look(): Promise<boolean> {
    return this.run(ask('sync', {}));
  }

  /** Exchanges because a person asked for it. */
  now(): Promise<boolean> {
    return this.run(ask('sync_now', { by_hand: true, metered: metered() }));
  }

  /** Exchanges what there is, if it is time for it; what fails is told where it is looked for. */
  async round(): Promise<void> {
    try {
      this.view ??= await ask('sync', {});
      if (this.view.shared) this.view = await ask('sync_now', { by_hand: false, metered: metered() });
    } catch {
      // The next one tells.
    }
  }

  /** Rounds by themselves for as long as the page is seen. Gives the way to end it. */
  keep(): () => void {
    void this.round();
    const end = tick.every(ROUND_S, () => void this.round());
    return () => {
      end();
      this.view = null;
      this.error = null;
    };
  }

  /** Looks again and again while somebody looks. Gives the way to end it. */
  watch(): () => void {
    this.error = null;
    void this.look();
    const beat = setInterval(() => document.hidden || void this.#again(), LOOK_MS);
    return () => clearInterval(beat);
  }

  async #again(): Promise<void> {
    try {
      this.view = await ask('sync', {});
    } catch (cause) {
      this.error = say(asApiError(cause).said);
    }
  }
}

export const sharing = new Sharing();
