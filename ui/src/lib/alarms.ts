import type { BirthId } from '../gen/BirthId';
import type { Level } from '../gen/Level';
import { BUZZ } from './feedback';
import { language } from './language.svelte';
import { given } from './ports';
import type { Coming } from './reminders';
import { ui } from './words';

/** A time that is to come, milliseconds from now. No word says of what. */
export interface Armed {
  inMs: number;
  level: Level;
}

/** What the system shows, the same for every birth; a locked screen is read by whoever passes. */
export interface SystemWords {
  reminder: string;
  /** What the system's settings call the reminders of each level, and the clock. */
  note: string;
  caution: string;
  limit: string;
  clock: string;
}

/** Time reminders that the device tells of with the program dead. */
export interface Alarms {
  /** Takes the place of all those of a birth; without a birth, all of all births end. */
  arm: (birth: BirthId | null, coming: readonly Armed[], words: SystemWords, patterns: Record<Level, readonly number[]>) => void;
}

/** One that moved by less is the same: an answer of the core may lie a moment behind the page. (ours) */
const SAME_MS = 1000;

interface Told {
  tongue: string;
  list: readonly Coming[];
}

export function systemWords(): SystemWords {
  return { reminder: ui('ui-alarm'), note: ui('ui-alarm-note'), caution: ui('ui-alarm-caution'), limit: ui('ui-alarm-limit'), clock: ui('ui-alarm-clock') };
}

/** Tells the device what is to come, and only when that has changed. */
export class DeviceAlarms {
  readonly #port: Alarms | undefined;
  readonly #told = new Map<BirthId, Told>();

  constructor(port: Alarms | undefined) {
    this.#port = port;
  }

  /** All that is to come of a birth, by `performance.now()`. */
  set(birth: BirthId, coming: readonly Coming[], now: number): void {
    if (!this.#port) return;
    const list = coming.filter(({ at }) => at > now).sort((a, b) => a.at - b.at);
    const told: Told = { tongue: language.tag, list };
    const before = this.#told.get(birth);
    if (before && same(before, told, now)) return;
    this.#told.set(birth, told);
    this.#arm(birth, list.map(({ at, level }) => ({ inMs: Math.round(at - now), level })));
  }

  /** There is no practice any more. */
  end(): void {
    this.#told.clear();
    this.#arm(null, []);
  }

  #arm(birth: BirthId | null, coming: readonly Armed[]): void {
    const { note, caution, limit } = BUZZ;
    this.#port?.arm(birth, coming, systemWords(), { note, caution, limit });
  }
}

/** Whether nothing has changed but that some have come by themselves. */
function same(before: Told, told: Told, now: number): boolean {
  const left = before.list.filter(({ at }) => at > now);
  const alike = (one: Coming, n: number): boolean => one.level === told.list[n]?.level && Math.abs(one.at - told.list[n].at) < SAME_MS;
  return before.tongue === told.tongue && left.length === told.list.length && left.every(alike);
}

export const alarms = new DeviceAlarms(given('alarms'));
