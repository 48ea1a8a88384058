import type { Level } from '../gen/Level';
import { gravity } from './findings';

/** A time reminder sounds once, and once more after this long. */
const AGAIN_MS = 60_000;
const HOUR_MS = 3_600_000;
/** Sounds in any hour; past that the screen alone tells. */
const MOST_AN_HOUR = 6;
/** One that is gone no longer than this is the same one: an answer of the core may lie a moment behind the page. (ours) */
const GONE_MS = 10_000;

/** A time reminder whose time has come. */
export interface Reminder {
  /** Its stable name. */
  key: string;
  level: Level;
}

/** A time reminder that was set, and when its time comes, by `performance.now()`. */
export interface Coming extends Reminder {
  at: number;
}

/** Those whose time has come. */
export function come(coming: readonly Coming[], now: number): Reminder[] {
  return coming.filter(({ at }) => at < now);
}

interface Heard {
  first: number;
  times: number;
  /** Since when it is gone; none while it stands. */
  gone: number | null;
  acknowledged: boolean;
}

/** Decides when a time reminder may be heard. It is told what stands, and the time; it keeps no clock. */
export class Reminders {
  #heard = new Map<string, Heard>();
  #sounds: number[];
  #begun = false;

  /** `sounds` are the times of all sounds, which several births share. */
  constructor(sounds: number[] = []) {
    this.#sounds = sounds;
  }

  /** The level to sound now, the gravest of those that wait; none is none. What stands already when the page opens is shown, not sounded. */
  sound(standing: Reminder[], now: number): Level | null {
    const wanted: Level[] = [];
    const keys = new Set(standing.map(({ key }) => key));
    for (const [key, heard] of this.#heard) {
      if (heard.gone !== null && now - heard.gone > GONE_MS) this.#heard.delete(key);
      else if (!keys.has(key)) heard.gone ??= now;
    }
    for (const { key, level } of standing) {
      const heard = this.#heard.get(key);
      if (!heard) {
        this.#heard.set(key, { first: now, times: this.#begun ? 1 : 2, gone: null, acknowledged: !this.#begun });
        if (this.#begun) wanted.push(level);
        continue;
      }
      heard.gone = null;
      if (heard.times === 1 && !heard.acknowledged && now - heard.first >= AGAIN_MS) {
        heard.times = 2;
        wanted.push(level);
      }
    }
    this.#begun = true;
    while (this.#sounds.length > 0 && now - (this.#sounds[0] ?? now) >= HOUR_MS) this.#sounds.shift();
    const gravest = wanted.sort((a, b) => gravity(b) - gravity(a))[0] ?? null;
    if (gravest === null || this.#sounds.length >= MOST_AN_HOUR) return null;
    this.#sounds.push(now);
    return gravest;
  }

  /** It was touched: it sounds no more. */
  acknowledge(key: string): void {
    const heard = this.#heard.get(key);
    if (heard) heard.acknowledged = true;
  }

  /** Whether it still calls for a look: until it is touched, or its second sound is over. */
  calls(key: string, now: number): boolean {
    const heard = this.#heard.get(key);
    return heard !== undefined && !heard.acknowledged && now - heard.first < AGAIN_MS + GONE_MS;
  }
}
