/** A time reminder sounds once, and once more after this long. */
const AGAIN_MS = 60_000;
const HOUR_MS = 3_600_000;
/** Sounds in any hour; past that the screen alone tells. */
const MOST_AN_HOUR = 6;

/** Decides when a time reminder may be heard. It is told what stands, and the time; it keeps no clock. */
export class Reminders {
  #heard = new Map<string, { first: number; times: number }>();
  #sounds: number[] = [];
  #begun = false;

  /** Whether to sound now. What stands already when the page opens is shown, not sounded. */
  sound(standing: string[], now: number): boolean {
    for (const key of this.#heard.keys()) if (!standing.includes(key)) this.#heard.delete(key);
    let wanted = false;
    for (const key of standing) {
      const heard = this.#heard.get(key);
      if (!heard) {
        this.#heard.set(key, { first: now, times: this.#begun ? 1 : 2 });
        wanted ||= this.#begun;
      } else if (heard.times === 1 && now - heard.first >= AGAIN_MS) {
        heard.times = 2;
        wanted = true;
      }
    }
    this.#begun = true;
    this.#sounds = this.#sounds.filter((at) => now - at < HOUR_MS);
    if (!wanted || this.#sounds.length >= MOST_AN_HOUR) return false;
    this.#sounds.push(now);
    return true;
  }
}
