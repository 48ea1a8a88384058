import type { BirthId } from '../gen/BirthId';
import type { DrainedView } from '../gen/DrainedView';
import type { Practice } from '../gen/Practice';
import type { RecoveryView } from '../gen/RecoveryView';
import type { RehearsalMode } from '../gen/RehearsalMode';
import type { StatusView } from '../gen/StatusView';
import { Birth } from './birth.svelte';
import { notSaved } from './failures.svelte';
import { feel } from './feedback';
import { locked } from './locked.svelte';
import { ago } from './touch';
import { ask, asApiError, type ApiError } from './transport';
import { ui } from './words';

export type Tab = 'stage' | 'exam' | 'timeline' | 'record';
export type Place = 'list' | 'birth' | 'practice' | 'rehearse';

/** Where the person is, and whether the door is open. */
class App {
  status = $state<StatusView | null>(null);
  place = $state<Place>('list');
  tab = $state<Tab>('stage');
  birth = $state<Birth | null>(null);
  /** Shown once after founding, then forgotten. */
  recovery = $state<RecoveryView | null>(null);
  /** Why the core could not even say how things stand. */
  broken = $state<ApiError | null>(null);
  /** A baby's birth is on its way to the disk. */
  bearing = $state(false);
  /** What the last unlocking brought in, until it is put aside. */
  drained = $state<DrainedView | null>(null);
  /** The door closed by itself: the page under it waits as it was. */
  shut = $state(false);

  async look(): Promise<void> {
    try {
      this.#take(await ask('status', {}));
      this.broken = null;
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
    this.#take(await ask('unlock', { passphrase }));
    this.shut = false;
    await this.birth?.refresh();
  }

  async lock(): Promise<void> {
    this.leave();
    this.#take(await ask('lock', {}));
  }

  async describe(practice: Practice): Promise<void> {
    this.#take(await ask('describe_practice', { practice }));
  }

  /** The one touch from which everything counts. */
  async babyBorn(touched: number): Promise<void> {
    if (this.bearing) return;
    this.bearing = true;
    feel('mark');
    try {
      const { birth, entry } = await ask('baby_born_now', { ago_ms: ago(touched) });
      this.open(birth);
      await this.birth?.refresh();
      this.birth?.offerUndo(entry, ui('ui-baby-born'));
    } catch (cause) {
      feel('failed');
      notSaved.add(ui('ui-baby-born'), asApiError(cause), () => this.babyBorn(touched));
    } finally {
      this.bearing = false;
    }
  }

  open(id: BirthId, tab: Tab = 'stage'): void {
    this.birth?.stop();
    this.birth = new Birth(id, this.status?.rehearsal != null);
    this.birth.start();
    this.place = 'birth';
    this.tab = tab;
  }

  leave(): void {
    this.birth?.stop();
    this.birth = null;
    this.place = 'list';
  }

  async rehearse(speed: number, mode: RehearsalMode): Promise<void> {
    this.leave();
    this.#take(await ask('rehearse', { speed, mode }));
    const scripted = this.status?.rehearsal?.birth;
    if (scripted) this.open(scripted);
  }

  async endRehearsal(): Promise<void> {
    this.#take(await ask('end_rehearsal', {}));
    this.leave();
  }

  #take(status: StatusView): void {
    const { door, drained } = status;
    if (door === 'locked' && this.birth) this.shut = true;
    if (drained || door !== 'open') this.drained = drained;
    locked.take(status.locked);
    this.status = { ...status };
  }
}

export const app = new App();
