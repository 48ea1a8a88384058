import type { Fact } from '../gen/Fact';
import type { LockedMark } from '../gen/LockedMark';
import type { LockedView } from '../gen/LockedView';
import type { NextMark } from '../gen/NextMark';
import { tick } from './clock.svelte';
import { factKey } from './facts';
import { notSaved } from './failures.svelte';
import { feel, feelMark } from './feedback';
import { lockedClock } from './lockscreen';
import { Marks, type Undo } from './marks.svelte';
import { Reminders, type Coming } from './reminders';
import { ago } from './touch';
import { ask, asApiError } from './transport';
import { say, ui } from './words';

/** How long nothing is marked after the screen has changed under the finger. */
const CHANGED_MS = 700;

/** The moment that is named later, as a mark among the others. */
const MOMENT: NextMark = { fact: { kind: 'noted', data: { text: '' } }, label: { id: 'ui-locked-moment' } };

/** What is marked while the practice is locked. No name is ever here. */
class Locked extends Marks<Undo> {
  view = $state.raw<LockedView | null>(null);
  /** `performance.now()` when the view came. */
  arrival = $state(0);
  readonly moment = MOMENT;
  /** The time reminders of the birth that was last open, which come also while it is locked: without a word of what they are. */
  coming = $state.raw<readonly Coming[]>([]);
  reminders = new Reminders();

  #quietUntil = -Infinity;

  /** Whether there is something to be timed. */
  get begun(): boolean {
    return this.view !== null && (this.view.third_stage !== null || this.view.marks.length > 0);
  }

  /** Goes on with the time reminders of a birth that is left. */
  remind(coming: readonly Coming[], reminders: Reminders): void {
    this.reminders = reminders;
    this.coming = coming;
  }

  /** What the core tells; nothing once it is unlocked. */
  take(view: LockedView | null): void {
    const before = this.begun;
    this.view = view;
    this.arrival = performance.now();
    if (view === null) {
      this.still();
      this.undo = this.made = null;
      this.saving.clear();
      this.tell([]);
      return;
    }
    if (this.begun && !before) this.#quietUntil = this.arrival + CHANGED_MS;
    this.tell(view.next);
    lockedClock.show(null, view.third_stage, this.arrival, this.arrival);
    tick.align(view.third_stage, this.arrival);
  }

  /** A mark made with one touch. */
  async mark({ fact, label }: NextMark, touched: number): Promise<void> {
    const key = factKey(fact);
    const what = say(label);
    if (touched < this.#quietUntil || this.saving.has(key)) return;
    this.begins(key, touched);
    feelMark(touched);
    try {
      const view = await ask('locked_mark', { mark: asMark(fact), ago_ms: ago(touched) });
      if (this.begun) this.settle();
      this.take(view);
      const clock = view.marks.at(-1)?.clock ?? '';
      this.made = { key, clock };
      if (this.isLatest(touched)) this.offer({ what, clock });
    } catch (cause) {
      feel('failed');
      notSaved.add(what, asApiError(cause), () => this.mark({ fact, label }, touched));
    } finally {
      this.ends(key);
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
