import type { Action } from 'svelte/action';

/** Contact after which a touch counts without waiting for the finger to lift. */
const CONTACT_MS = 150;
/** 10 mm: a finger that has left the button by more meant something else. */
const SLIP_PX = 63;
/** The same button again within this time is one press. */
const REPEAT_MS = 1000;
/** Under water a contact counts only after it has lasted. */
const WET_MS = 80;
/** How long after a touch has ended its click may still come. */
const CLICK_MS = 400;
const WET_CONTACTS = 3;
const WET_STARTS = 4;
const WET_WINDOW_MS = 500;
const BURST_WINDOW_MS = 5000;
const BURSTS = 3;

/** Whole milliseconds since a touch, as the core takes them. */
export function ago(touched: number): number {
  return Math.max(0, Math.round(performance.now() - touched));
}

export interface Press {
  /** `touched` is `performance.now()` at the moment of contact. */
  commit: (touched: number) => void;
  /** A finger is down, or no longer. */
  down?: (down: boolean) => void;
  /** Counts only on lifting: for buttons in a list that is scrolled. The time is the contact's all the same. */
  lift?: boolean;
}

/** The time of a mark is the first contact; it counts on lifting inside the button, or after 150 ms. */
export const press: Action<HTMLElement, Press> = (node, initial) => {
  let options = initial;
  let held: { id: number; touched: number; timer: ReturnType<typeof setTimeout> | undefined } | undefined;
  let last = -Infinity;
  /** The contact that counted while it lasted. */
  let counted: number | undefined;

  const release = (): void => {
    if (held) clearTimeout(held.timer);
    held = undefined;
    options.down?.(false);
  };
  const commit = (touched: number): void => {
    release();
    if (!options.lift && touched - last < REPEAT_MS) return;
    last = touched;
    settle();
    options.commit(touched);
  };
  const pointerdown = (event: PointerEvent): void => {
    if (!event.isPrimary && !water.wet()) return;
    if (event.button !== 0 || (node instanceof HTMLButtonElement && node.disabled)) return;
    const touched = event.timeStamp;
    release();
    const early = (): void => {
      counted = event.pointerId;
      commit(touched);
    };
    const timer = options.lift ? undefined : setTimeout(early, CONTACT_MS);
    held = { id: event.pointerId, touched, timer };
    options.down?.(true);
  };
  const pointermove = (event: PointerEvent): void => {
    if (held?.id === event.pointerId && distance(node, event) > SLIP_PX) release();
  };
  const pointerup = (event: PointerEvent): void => {
    if (counted === event.pointerId) {
      counted = undefined;
      swallowClick();
    }
    if (held?.id !== event.pointerId) return;
    const long = event.timeStamp - held.touched >= WET_MS;
    if (distance(node, event) > 0 || (water.wet() && !long)) return release();
    swallowClick();
    commit(held.touched);
  };
  const pointercancel = (event: PointerEvent): void => {
    if (held?.id === event.pointerId) release();
  };
  // A key, a switch or a screen reader gives a click without a finger.
  const click = (event: MouseEvent): void => {
    if (event.detail === 0) commit(event.timeStamp);
  };
  const calm = (event: Event): void => event.preventDefault();

  node.addEventListener('pointerdown', pointerdown);
  window.addEventListener('pointermove', pointermove);
  window.addEventListener('pointerup', pointerup);
  window.addEventListener('pointercancel', pointercancel);
  node.addEventListener('click', click);
  node.addEventListener('contextmenu', calm);
  return {
    update: (next) => {
      options = next;
    },
    destroy: () => {
      release();
      node.removeEventListener('pointerdown', pointerdown);
      window.removeEventListener('pointermove', pointermove);
      window.removeEventListener('pointerup', pointerup);
      window.removeEventListener('pointercancel', pointercancel);
      node.removeEventListener('click', click);
      node.removeEventListener('contextmenu', calm);
    },
  };
};

/** The browser makes a click of a touch that has ended: it would fall on whatever stands there once the press has changed the page. */
function swallowClick(): void {
  const swallow = (event: MouseEvent): void => {
    if (event.detail === 0) return;
    event.preventDefault();
    event.stopPropagation();
  };
  window.addEventListener('click', swallow, { capture: true, once: true });
  setTimeout(() => window.removeEventListener('click', swallow, true), CLICK_MS);
}

/** What is being typed counts before the press does: a finger lifts before the field that it leaves tells of its change. */
function settle(): void {
  const field = document.activeElement;
  if (field instanceof HTMLInputElement) field.blur();
}

function distance(node: HTMLElement, event: PointerEvent): number {
  const box = node.getBoundingClientRect();
  const x = Math.max(box.left - event.clientX, 0, event.clientX - box.right);
  const y = Math.max(box.top - event.clientY, 0, event.clientY - box.bottom);
  return Math.hypot(x, y);
}

/** Water on the glass: many contacts at once, or many starts in a short time. */
class Water {
  #down = new Set<number>();
  #starts: number[] = [];
  #wetUntil = -Infinity;
  #bursts: number[] = [];
  /** Told when three bursts came within five seconds. */
  flooded: (() => void) | undefined;

  wet(): boolean {
    return performance.now() < this.#wetUntil || this.#down.size >= WET_CONTACTS;
  }

  watch(): () => void {
    const start = (event: PointerEvent): void => {
      if (event.pointerType !== 'touch') return;
      const now = event.timeStamp;
      this.#down.add(event.pointerId);
      this.#starts = [...this.#starts.filter((at) => now - at < WET_WINDOW_MS), now];
      if (this.#down.size < WET_CONTACTS && this.#starts.length < WET_STARTS) return;
      if (now > this.#wetUntil) this.#burst(now);
      this.#wetUntil = now + WET_WINDOW_MS;
    };
    const end = (event: PointerEvent): void => {
      this.#down.delete(event.pointerId);
    };
    window.addEventListener('pointerdown', start, true);
    window.addEventListener('pointerup', end, true);
    window.addEventListener('pointercancel', end, true);
    return () => {
      window.removeEventListener('pointerdown', start, true);
      window.removeEventListener('pointerup', end, true);
      window.removeEventListener('pointercancel', end, true);
    };
  }

  #burst(now: number): void {
    this.#bursts = [...this.#bursts.filter((at) => now - at < BURST_WINDOW_MS), now];
    if (this.#bursts.length < BURSTS) return;
    this.#bursts = [];
    this.flooded?.();
  }
}

export const water = new Water();
