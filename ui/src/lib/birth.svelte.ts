import type { At } from '../gen/At';
import type { BirthId } from '../gen/BirthId';
import type { BirthView } from '../gen/BirthView';
import type { EntryId } from '../gen/EntryId';
import type { Fact } from '../gen/Fact';
import type { NextMark } from '../gen/NextMark';
import type { Request } from '../gen/Request';
import { keepAgain, type Made } from './again';
import { alarms } from './alarms';
import { tick } from './clock.svelte';
import { factKey } from './facts';
import { notSaved } from './failures.svelte';
import { feel, feelMark } from './feedback';
import { comingOf } from './findings';
import { lockedClock } from './lockscreen';
import { Marks, type Undo } from './marks.svelte';
import { Reminders, type Coming } from './reminders';
import { ago } from './touch';
import { ask, asApiError } from './transport';
import { say, ui } from './words';

/** What a sheet writes. */
export type Order = Extract<Request, { request: 'record' | 'amend' }>;

/** Seconds between two looks. */
const REFRESH = 5;
const REHEARSAL_REFRESH = 1;

/** When time reminders sounded, whichever birth they were of. */
const sounded: number[] = [];

/** A moment that is named later. */
export const MOMENT: NextMark = { fact: { kind: 'moment_marked' }, label: { id: 'ui-unnamed-mark' } };

/** One birth as the core tells it, and what the person writes into it. */
export class Birth extends Marks<Undo & { entry: EntryId; back?: Order }> {
  view = $state.raw<BirthView | null>(null);
  /** `performance.now()` when the view came. */
  arrival = $state(0);
  readonly reminders = new Reminders(sounded);
  /** The time reminders, as the last answer tells them. */
  coming = $state.raw<Coming[]>([]);
  /** Why the last look at the birth failed. */
  unread = $state<string | null>(null);

  /** The last mark of each button. */
  readonly #made = new Map<string, Made>();
  /** Reminders whose time was set: of a crowd, only the next few are. */
  readonly #armed = new Set<string>();
  #asked = 0;
  #shown = 0;
  #still: (() => void) | undefined;

  constructor(
    readonly id: BirthId,
    readonly rehearsal: boolean,
  ) {
    super();
  }

  start(): void {
    this.#still = tick.every(this.rehearsal ? REHEARSAL_REFRESH : REFRESH, () => void this.refresh());
    void this.refresh();
  }

  stop(): void {
    this.#still?.();
    this.still();
  }

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
      for (const due of view.due) if (due.armed) this.#armed.add(due.id);
      this.coming = comingOf(view, this.arrival, this.#armed);
      this.#tellDevice(view);
      this.tell(view.next);
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
    const first = this.saving.get(key);
    // The button said that it was being saved: it is the same mark, and nothing that was felt is lost.
    if (first !== undefined) return void keepAgain(this.#made.get(key), touched, first);
    this.begins(key, touched);
    feelMark(touched);
    try {
      const made = ask('record', this.#marked(fact, touched)).then(({ entry }) => ({ birth: this.id, entry }));
      this.#made.set(key, made);
      const { entry } = await made;
      this.settle();
      await this.refresh();
      const clock = this.#clockOf(entry);
      this.made = { key, clock };
      if (this.isLatest(touched)) this.offerUndo(entry, what);
    } catch (cause) {
      feel('failed');
      notSaved.add(what, asApiError(cause), () => this.mark({ fact, label }, touched), () => ({ request: 'record', ...this.#marked(fact, touched) }));
    } finally {
      this.ends(key);
    }
  }

  /** The button of a mark was touched again, too soon for a mark of its own. */
  again({ fact }: NextMark, touched: number, first: number): void {
    void keepAgain(this.#made.get(factKey(fact)), touched, first);
  }

  /** Gives an order that writes; whoever asked keeps what was typed if this throws. Tells the new entry, once it is on disk. */
  async put(order: Order): Promise<EntryId> {
    const { request, ...params } = order;
    const { entry } = await ask(request, params as never);
    feel('mark');
    return entry;
  }

  /** The same, and the chart read anew. */
  async write(order: Order): Promise<EntryId> {
    const entry = await this.put(order);
    await this.refresh();
    return entry;
  }

  /** Takes an entry out of the chart; done once that is on disk. */
  async takeOut(entry: EntryId, reason: string): Promise<void> {
    await ask('retract', { birth: this.id, entry, reason });
    feel('undo');
    if (this.undo?.entry === entry) this.undo = null;
  }

  /** The same, and the chart read anew. */
  async retract(entry: EntryId, reason: string): Promise<void> {
    await this.takeOut(entry, reason);
    await this.refresh();
  }

  /** Takes back what can be; false where it is not taken back, which is told. */
  async takeBack(): Promise<boolean> {
    const undo = this.undo;
    if (!undo) return false;
    this.undo = null;
    this.made = null;
    const { back } = undo;
    const again = async (): Promise<void> => {
      if (back) await this.write(back);
      else await this.retract(undo.entry, ui('ui-undo-reason'));
    };
    try {
      await again();
      return true;
    } catch (cause) {
      feel('failed');
      const order: Request = back ?? { request: 'retract', birth: this.id, entry: undo.entry, reason: ui('ui-undo-reason') };
      notSaved.add(ui('ui-undo-of', { what: undo.what }), asApiError(cause), again, () => order);
      return false;
    }
  }

  /** Ten seconds in which one touch takes the entry back, or gives the order that puts back what stood there before. */
  offerUndo(entry: EntryId, what: string, back?: Order): void {
    this.offer({ entry, what, clock: this.#clockOf(entry), ...(back ? { back } : {}) });
  }

  /** A mark as an order: its time counts back from the moment it is given. */
  #marked(fact: Fact, touched: number): { birth: BirthId; fact: Fact; at: At } {
    return { birth: this.id, fact, at: { at: 'now', ago_ms: ago(touched) } };
  }

  /** What the device does by itself, also with the program dead. A rehearsal leaves nothing behind on it. */
  #tellDevice(view: BirthView): void {
    if (this.rehearsal) return;
    alarms.set(this.id, this.coming, this.arrival);
    lockedClock.show(this.id, view.third_stage, this.arrival, this.arrival);
  }

  #clockOf(entry: EntryId): string {
    return this.view?.timeline.find((line) => line.entry === entry)?.clock ?? '';
  }
}
