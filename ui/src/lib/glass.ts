// For tests: a sheet of glass with buttons, fingers and water on it, and a clock that only the test moves.

/** A contact: begins so many ms after the start, lasts so many, at a place in px. */
export interface Contact {
  at: number;
  lasts: number;
  x: number;
  y: number;
  /** It lifts so many px lower than it began. */
  slips?: number;
}

/** Width and height of the screen, px. */
export const WIDE = 360;
export const HIGH = 740;

type Listener = (event: PointerEvent) => void;
interface Timer {
  at: number;
  id: number;
  run: () => void;
}

/** Something that can be touched. */
export class Pane {
  readonly listeners = new Map<string, Set<Listener>>();

  constructor(
    readonly left: number,
    readonly top: number,
    readonly wide: number,
    readonly high: number,
  ) {}

  addEventListener(type: string, listener: Listener): void {
    const all = this.listeners.get(type) ?? new Set();
    this.listeners.set(type, all.add(listener));
  }

  removeEventListener(type: string, listener: Listener): void {
    this.listeners.get(type)?.delete(listener);
  }

  contains(other: unknown): boolean {
    return other === this;
  }

  holds({ x, y }: { x: number; y: number }): boolean {
    return x >= this.left && x < this.left + this.wide && y >= this.top && y < this.top + this.high;
  }

  getBoundingClientRect(): { left: number; right: number; top: number; bottom: number } {
    return { left: this.left, right: this.left + this.wide, top: this.top, bottom: this.top + this.high };
  }
}

/** The window that the code under test is given. */
export class Glass {
  now = 0;
  /** What lies on top takes the touch. */
  panes: Pane[] = [];
  readonly root = new Pane(0, 0, WIDE, HIGH);
  readonly #capture = new Pane(0, 0, 0, 0);
  readonly #bubble = new Pane(0, 0, 0, 0);
  #timers: Timer[] = [];
  #ids = 0;

  install(stub: (name: string, value: unknown) => unknown): void {
    const phase = (capture: unknown): Pane => (capture === true ? this.#capture : this.#bubble);
    stub('window', {
      addEventListener: (type: string, listener: Listener, capture?: unknown) => phase(capture).addEventListener(type, listener),
      removeEventListener: (type: string, listener: Listener, capture?: unknown) => phase(capture).removeEventListener(type, listener),
    });
    stub('document', { activeElement: null });
    stub('HTMLButtonElement', class {});
    stub('HTMLInputElement', class {});
    stub('performance', { now: () => this.now });
    stub('setTimeout', (run: () => void, ms = 0) => {
      this.#ids += 1;
      this.#timers.push({ at: this.now + ms, id: this.#ids, run });
      return this.#ids;
    });
    stub('requestAnimationFrame', (run: () => void) => (setTimeout as unknown as (run: () => void, ms: number) => number)(run, 16));
    stub('cancelAnimationFrame', (id: number) => clearTimeout(id));
    stub('clearTimeout', (id: number | undefined) => (this.#timers = this.#timers.filter((timer) => timer.id !== id)));
  }

  /** Lets the time pass until then. */
  run(until: number): void {
    for (;;) {
      const next = this.#timers.filter(({ at }) => at <= until).sort((a, b) => a.at - b.at || a.id - b.id)[0];
      if (!next) break;
      this.#timers = this.#timers.filter((timer) => timer !== next);
      this.now = Math.max(this.now, next.at);
      next.run();
    }
    this.now = Math.max(this.now, until);
  }

  /** Lets these contacts happen, in order of time. */
  touch(contacts: Contact[]): void {
    const start = this.now;
    const events = contacts.flatMap((contact, id) => [
      { at: start + contact.at, type: 'pointerdown', contact, id },
      { at: start + contact.at + contact.lasts, type: 'pointerup', contact, id },
    ]);
    events.sort((a, b) => a.at - b.at);
    const targets = new Map<number, Pane>();
    /** Contacts that are down, with whether each is the primary one: it began on an empty glass. */
    const down = new Map<number, boolean>();
    for (const { at, type, contact, id } of events) {
      this.run(at);
      // A contact stays with what it began on.
      const target = targets.get(id) ?? [...this.panes].reverse().find((pane) => pane.holds(contact)) ?? this.root;
      targets.set(id, target);
      const isPrimary = down.get(id) ?? down.size === 0;
      if (type === 'pointerdown') down.set(id, isPrimary);
      else down.delete(id);
      const event = { type, target, pointerId: id, pointerType: 'touch', isPrimary, button: 0, timeStamp: at, clientX: contact.x, clientY: contact.y + (type === 'pointerup' ? (contact.slips ?? 0) : 0) };
      for (const pane of [this.#capture, target, this.#bubble]) {
        for (const listener of [...(pane.listeners.get(type) ?? [])]) listener(event as unknown as PointerEvent);
      }
    }
  }
}

/** Numbers from 0 to 1 that a seed gives (mulberry32). */
export function random(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}
