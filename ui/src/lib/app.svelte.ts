import type { BirthId } from '../gen/BirthId';
import type { DrainedView } from '../gen/DrainedView';
import type { Practice } from '../gen/Practice';
import type { RecoveryView } from '../gen/RecoveryView';
import type { ScenarioName } from '../gen/ScenarioName';
import type { RehearsalMode } from '../gen/RehearsalMode';
import type { Request } from '../gen/Request';
import type { RestoredView } from '../gen/RestoredView';
import type { SalvageView } from '../gen/SalvageView';
import type { StatusView } from '../gen/StatusView';
import { keepAgain, type Made } from './again';
import { alarms } from './alarms';
import { Birth } from './birth.svelte';
import { notSaved } from './failures.svelte';
import { dictation } from './dictation.svelte';
import { feel, feelMark } from './feedback';
import { locked } from './locked.svelte';
import { lockedClock } from './lockscreen';
import { ago } from './touch';
import { ask, asApiError, door, type ApiError } from './transport';
import { ui } from './words';

const TABS = ['stage', 'exam', 'timeline', 'record'] as const;
export type Tab = (typeof TABS)[number];
export type Place = 'list' | 'birth' | 'practice' | 'sharing' | 'rehearse' | 'damaged';

/** Where the person is, and whether the door is open. */
class App {
  status = $state<StatusView | null>(null);
  place = $state<Place>('list');
  tab = $state<Tab>('stage');
  birth = $state<Birth | null>(null);
  /** Shown once after founding, then forgotten. */
  recovery = $state<RecoveryView | null>(null);
  /** That sheet gets back what the phones of the practice share, and not this phone's records. */
  sheetOfAll = $state(false);
  /** Why the core could not even say how things stand. */
  broken = $state<ApiError | null>(null);
  /** A baby's birth is on its way to the disk. */
  bearing = $state(false);
  /** What the last unlocking brought in, until it is put aside. */
  drained = $state<DrainedView | null>(null);
  /** What a backup brought, until it is put aside. */
  restored = $state.raw<RestoredView | null>(null);
  /** What could be read of a damaged store, until it is put aside. */
  report = $state.raw<SalvageView | null>(null);
  /** That a part of the store could not be read. */
  damaged = $state<ApiError | null>(null);
  /** The passphrase is asked for, to show the names. */
  asking = $state(false);

  #born: Made | undefined;
  /** Where to go on after the door closed by itself. */
  #back: { birth: BirthId; tab: Tab } | null = null;

  async look(): Promise<void> {
    const first = this.status === null;
    try {
      this.#take(await ask('status', {}));
      this.broken = null;
      if (first) this.#comeBack();
    } catch (cause) {
      this.broken = asApiError(cause);
    }
  }

  async found(practice: Practice, passphrase: string): Promise<void> {
    const { recovery } = await ask('create_practice', { practice, passphrase });
    this.recovery = recovery;
    await this.look();
  }

  async unlock(passphrase: string): Promise<void> {
    this.#enter(await ask('unlock', { passphrase }));
  }

  async unlockByDevice(): Promise<void> {
    this.#enter(await ask('unlock_by_device', {}));
  }

  async lock(): Promise<void> {
    await dictation.finish();
    this.leave();
    this.#take(await ask('lock', {}));
  }

  /** Nobody has touched for a while. A rehearsal never rests, nor does the one key that is shown only now. */
  async rest(): Promise<void> {
    if (this.status?.door !== 'open' || this.status.rehearsal || this.recovery) return;
    await dictation.finish();
    try {
      this.#take(await ask('rest', {}));
    } catch {
      await this.look();
    }
  }

  async showNames(passphrase: string): Promise<void> {
    this.#take(await ask('show_names', { passphrase }));
  }

  /** Opens what can be read of a damaged store, or builds it anew from that. */
  async readDamaged(passphrase: string): Promise<void> {
    this.#enter(await ask('read_damaged', { passphrase }));
    this.report = this.status?.salvage ?? null;
  }

  async salvage(passphrase: string): Promise<void> {
    this.leave();
    this.#enter(await ask('salvage', { passphrase }));
    this.report = this.status?.salvage ?? null;
  }

  async restore(passphrase: string): Promise<void> {
    const restored = await ask('restore', { passphrase });
    this.leave();
    this.#enter(restored.status);
    this.report = null;
    this.restored = restored;
  }

  /** Keeps an order that could not be saved in another file. */
  async keepElsewhere(what: Request): Promise<void> {
    this.#take(await ask('elsewhere', { what }));
  }

  async describe(practice: Practice): Promise<void> {
    this.#take(await ask('describe_practice', { practice }));
  }

  /** Entries bear this name from now on; none is the practitioner's own. */
  async writeAs(scribe: string | null): Promise<void> {
    this.#take(await ask('write_as', { scribe }));
  }

  /** The one touch from which everything counts. */
  async babyBorn(touched: number): Promise<void> {
    if (this.bearing) return;
    this.bearing = true;
    feelMark(touched);
    const order = (): { ago_ms: number } => ({ ago_ms: ago(touched) });
    try {
      this.#born = ask('baby_born_now', order());
      const { birth, entry } = await this.#born;
      this.open(birth);
      await this.birth?.refresh();
      this.birth?.offerUndo(entry, ui('ui-baby-born'));
    } catch (cause) {
      feel('failed');
      notSaved.add(ui('ui-baby-born'), asApiError(cause), () => this.babyBorn(touched), () => ({ request: 'baby_born_now', ...order() }));
    } finally {
      this.bearing = false;
    }
  }

  /** That button was touched again, too soon for a second birth. */
  bornAgain(touched: number, first: number): void {
    void keepAgain(this.#born, touched, first);
  }

  open(id: BirthId, tab: Tab = 'stage'): void {
    this.birth?.stop();
    this.birth = new Birth(id, this.status?.rehearsal != null);
    this.birth.start();
    this.place = 'birth';
    this.tab = tab;
  }

  leave(): void {
    void dictation.finish();
    this.birth?.stop();
    if (this.birth && !this.birth.rehearsal) locked.remind(this.birth.coming, this.birth.reminders);
    this.birth = null;
    this.#back = null;
    this.place = 'list';
  }

  async rehearse(scenario: ScenarioName, speed: number, mode: RehearsalMode): Promise<void> {
    this.leave();
    this.#take(await ask('rehearse', { scenario, speed, mode }));
    const scripted = this.status?.rehearsal?.birth;
    if (scripted) this.open(scripted);
  }

  async endRehearsal(): Promise<void> {
    const status = await ask('end_rehearsal', {});
    this.leave();
    this.#take(status);
  }

  /** Keeps in the page's address where the person is: the system may end the page at any time, and reads it again there. */
  remember(): void {
    const at = new URLSearchParams(location.hash.slice(1));
    if (this.birth && !this.birth.rehearsal) at.set('birth', this.birth.id);
    else at.delete('birth');
    if (at.has('birth')) at.set('tab', this.tab);
    else at.delete('tab');
    if (location.hash.slice(1) !== at.toString()) history.replaceState(null, '', `${location.pathname}${location.search}#${at}`);
  }

  #comeBack(): void {
    const at = new URLSearchParams(location.hash.slice(1));
    const birth = at.get('birth');
    if (birth && this.status?.door === 'open') this.open(birth, TABS.find((tab) => tab === at.get('tab')));
  }

  /** The door was opened: back to where it closed. */
  #enter(status: StatusView): void {
    this.damaged = null;
    if (this.place === 'damaged') this.place = 'list';
    this.#take(status);
    const back = this.#back;
    this.#back = null;
    if (back) this.open(back.birth, back.tab);
  }

  #take(status: StatusView): void {
    const { door, drained } = status;
    const turned = status.names_hidden !== (this.status?.names_hidden ?? false);
    if (door !== 'open') this.#forget();
    if (door === 'no_practice' && this.status?.door !== 'no_practice') this.#endOnDevice();
    if (drained || door !== 'open') this.drained = drained;
    locked.take(status.locked);
    this.status = { ...status };
    if (turned) this.#namesTurned(status.names_hidden);
  }

  /** What the device would tell of a practice that is gone. */
  #endOnDevice(): void {
    alarms.end();
    lockedClock.end();
  }

  /** Nothing of a birth stays behind a closed door; only which it was. */
  #forget(): void {
    const birth = this.birth;
    if (birth) {
      const back = birth.rehearsal ? null : { birth: birth.id, tab: this.tab };
      this.leave();
      this.#back = back;
    }
    this.restored = this.report = null;
  }

  /** A third stage goes on under the eyes; everything else makes room for the list. */
  #namesTurned(hidden: boolean): void {
    const birth = this.birth;
    if (hidden && (this.place === 'practice' || this.place === 'sharing')) this.place = 'list';
    if (hidden && birth?.view?.third_stage?.running !== true) this.leave();
    else if (hidden && this.tab === 'record') this.tab = 'stage';
    if (hidden) this.restored = this.report = null;
    void this.birth?.refresh();
  }
}

export const app = new App();

door.shut = door.hidden = () => void app.look();
door.damaged = (error) => (app.damaged = error);
