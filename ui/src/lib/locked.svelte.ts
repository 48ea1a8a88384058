import type { Fact } from '../gen/Fact';
import type { LockedMark } from '../gen/LockedMark';
import type { LockedView } from '../gen/LockedView';
import type { NextMark } from '../gen/NextMark';
import { UNDO_MS } from './birth.svelte';
import { tick } from './clock.svelte';
import { factKey } from './facts';
import { notSaved } from './failures.svelte';
import { feel } from './feedback';
import { ago } from './touch';
import { ask, asApiError } from './transport';
import { say, ui } from './words';

/** How long the buttons keep their places after a mark, so that no second touch meets another button. */
const SETTLE_MS = 1200;
/** How long nothing is marked after the screen has changed under the finger. */
const CHANGED_MS = 700;

/** The moment that is named later, as a mark among the others. */
const MOMENT: NextMark = { fact: { kind: 'noted', data: { text: '' } }, label: { id: 'ui-locked-moment' } };

/** What is marked while the practice is locked. No name is ever here. */
class Locked {
  view = $state.raw<LockedView | null>(null);
  /** `performance.now()` when the view came. */
  arrival = $state(0);
  undo = $state<{ what: string; clock: string } | null>(null);
  /** Key of the fact that is on its way to the disk. */
  saving = $state<string | null>(null);
  made = $state<{ key: string; clock: string } | null>(null);
  /** The buttons as they stand on the screen. */
  next = $state.raw<NextMark[]>([]);
  readonly moment = MOMENT;

  #undoTimer: ReturnType<typeof setTimeout> | undefined;
  #settleTimer: ReturnType<typeof setTimeout> | undefined;
  #quietUntil = -Infinity;

  /** Whether there is something to be timed. */
  get begun(): boolean {
    return this.view !== null && (this.view.third_stage !== null || this.view.marks.length > 0);
  }

  /** What the core tells; nothing once it is unlocked. */
  take(view: LockedView | null): void {
    const before = this.begun;
    this.view = view;
    this.arrival = performance.now();
    if (view === null) {
      clearTimeout(this.#undoTimer);
      clearTimeout(this.#settleTimer);
      this.#settleTimer = undefined;
      this.undo = this.made = this.saving = null;
      this.next = [];
      return;
    }
    if (this.begun && !before) this.#quietUntil = this.arrival + CHANGED_MS;
    if (!this.#settleTimer) this.next = view.next;
    tick.align(view.third_stage, this.arrival);
  }

  /** A mark made with one touch. */
  async mark({ fact, label }: NextMark, touched: number): Promise<void> {
    const key = factKey(fact);
    const what = say(label);
    if (this.saving === key || touched < this.#quietUntil) return;
    this.saving = key;
    // From here on an undo would mean this mark, not the one before.
    this.undo = null;
    feel('mark');
    try {
      const view = await ask('locked_mark', { mark: asMark(fact), ago_ms: ago(touched) });
      if (this.begun) this.#settle();
      this.take(view);
      const clock = view.marks.at(-1)?.clock ?? '';
      this.made = { key, clock };
      this.#offerUndo(what, clock);
    } catch (cause) {
      feel('failed');
      notSaved.add(what, asApiError(cause), () => this.mark({ fact, label }, touched));
    } finally {
      this.saving = null;
    }
  }

  takeBack = async (): Promise<void> => {
    const undo = this.undo;
    if (!undo) return;
    this.undo = null;
    this.made = null;
    try {
      this.take(await ask('locked_undo', {}));
      feel('undo');
    } catch (cause) {
      feel('failed');
      notSaved.add(ui('ui-undo-of', { what: undo.what }), asApiError(cause), async () => this.take(await ask('locked_undo', {})));
    }
  };

  /** Ten seconds in which one touch takes the mark back. */
  #offerUndo(what: string, clock: string): void {
    clearTimeout(this.#undoTimer);
    this.undo = { what, clock };
    this.#undoTimer = setTimeout(() => (this.undo = null), UNDO_MS);
  }

  #settle(): void {
    clearTimeout(this.#settleTimer);
    this.#settleTimer = setTimeout(() => {
      this.#settleTimer = undefined;
      this.made = null;
      if (this.view) this.next = this.view.next;
    }, SETTLE_MS);
  }
}

/** The mark that writes a fact. */
function asMark(fact: Fact): LockedMark {
  switch (fact.kind) {
    case 'baby_born':
      return { kind: 'baby_born' };
    case 'cord_pulsation_stopped':
    case 'cord_clamped':
    case 'cord_cut':
    case 'placenta_born':
    case 'membranes_born':
      return fact;
    default:
      return { kind: 'moment' };
  }
}

export const locked = new Locked();
