import type { At } from '../gen/At';
import type { BirthId } from '../gen/BirthId';
import type { BirthView } from '../gen/BirthView';
import type { EntryId } from '../gen/EntryId';
import type { Fact } from '../gen/Fact';
import type { NextMark } from '../gen/NextMark';
import { tick } from './clock.svelte';
import { factKey } from './facts';
import { notSaved } from './failures.svelte';
import { feel } from './feedback';
import { ago } from './touch';
import { ask, asApiError } from './transport';
import { say, ui } from './words';

const REFRESH_MS = 5000;
const REHEARSAL_REFRESH_MS = 1000;
/** How long a mark can be undone with one touch. */
export const UNDO_MS = 10_000;
/** How long the buttons keep their places after a mark, so that no second touch meets another button. */
const SETTLE_MS = 1200;

export interface Undo {
  entry: EntryId;
  what: string;
  clock: string;
}

/** One birth as the core tells it, and what the person writes into it. */
export class Birth {
  view = $state.raw<BirthView | null>(null);
  /** `performance.now()` when the view came. */
  arrival = $state(0);
  undo = $state<Undo | null>(null);
  /** Key of the fact that is on its way to the disk. */
  saving = $state<string | null>(null);
  /** The mark just made, with its time. */
  made = $state<{ key: string; clock: string } | null>(null);
  /** The buttons as they stand on the screen. */
  next = $state.raw<NextMark[]>([]);
  /** Why the last look at the birth failed. */
  unread = $state<string | null>(null);

  #asked = 0;
  #shown = 0;
  #beat: ReturnType<typeof setInterval> | undefined;
  #undoTimer: ReturnType<typeof setTimeout> | undefined;
  #settleTimer: ReturnType<typeof setTimeout> | undefined;

  constructor(
    readonly id: BirthId,
    readonly rehearsal: boolean,
  ) {}

  start(): void {
    this.#beat = setInterval(this.#look, this.rehearsal ? REHEARSAL_REFRESH_MS : REFRESH_MS);
    document.addEventListener('visibilitychange', this.#look);
    void this.refresh();
  }

  stop(): void {
    clearInterval(this.#beat);
    clearTimeout(this.#undoTimer);
    clearTimeout(this.#settleTimer);
    document.removeEventListener('visibilitychange', this.#look);
  }

  #look = (): void => {
    if (!document.hidden) void this.refresh();
  };

  /** Asks the core anew; an older answer never replaces a newer one. */
  async refresh(): Promise<void> {
    const asked = ++this.#asked;
    try {
      const view = await ask('birth', { birth: this.id });
      if (asked < this.#shown) return;
      this.#shown = asked;
      this.view = view;
      this.arrival = performance.now();
      this.unread = null;
      if (!this.#settleTimer) this.next = view.next;
      const running = view.third_stage ?? view.babies.find((baby) => baby.cord)?.cord ?? null;
      tick.align(running, this.arrival);
    } catch (cause) {
      this.unread = say(asApiError(cause).said);
    }
  }

  /** A mark made with one touch. */
  async mark({ fact, label }: NextMark, touched: number): Promise<void> {
    const key = factKey(fact);
    const what = say(label);
    if (this.saving === key) return;
    this.saving = key;
    // From here on an undo would mean this mark, not the one before.
    this.undo = null;
    feel('mark');
    try {
      const { entry } = await ask('record', { birth: this.id, fact, at: { at: 'now', ago_ms: ago(touched) } });
      this.#settle();
      await this.refresh();
      const clock = this.#clockOf(entry);
      this.made = { key, clock };
      this.offerUndo(entry, what);
    } catch (cause) {
      feel('failed');
      notSaved.add(what, asApiError(cause), () => this.mark({ fact, label }, touched));
    } finally {
      this.saving = null;
    }
  }

  /** Writes a fact; the sheet that asked keeps what was typed if this throws. Without a name there is no undo. */
  async record(fact: Fact, at: At, what: string | null): Promise<void> {
    const { entry } = await ask('record', { birth: this.id, fact, at });
    feel('mark');
    await this.refresh();
    if (what !== null) this.offerUndo(entry, what);
  }

  async amend(entry: EntryId, fact: Fact | null, at: At | null, reason: string): Promise<void> {
    await ask('amend', { birth: this.id, entry, fact, at, reason });
    feel('mark');
    await this.refresh();
  }

  async retract(entry: EntryId, reason: string): Promise<void> {
    await ask('retract', { birth: this.id, entry, reason });
    feel('undo');
    if (this.undo?.entry === entry) this.undo = null;
    await this.refresh();
  }

  async takeBack(): Promise<void> {
    const undo = this.undo;
    if (!undo) return;
    this.undo = null;
    this.made = null;
    try {
      await this.retract(undo.entry, ui('ui-undo-reason'));
    } catch (cause) {
      feel('failed');
      notSaved.add(ui('ui-undo-of', { what: undo.what }), asApiError(cause), () => this.retract(undo.entry, ui('ui-undo-reason')));
    }
  }

  /** Ten seconds in which one touch takes the entry back. */
  offerUndo(entry: EntryId, what: string): void {
    clearTimeout(this.#undoTimer);
    this.undo = { entry, what, clock: this.#clockOf(entry) };
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

  #clockOf(entry: EntryId): string {
    return this.view?.timeline.find((line) => line.entry === entry)?.clock ?? '';
  }
}
