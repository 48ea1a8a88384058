import type { Action } from 'svelte/action';
import { feelMark, unfeelMark } from './feedback';
import { water, WET_MS } from './water';

/** Contact after which a touch counts without waiting for the finger to lift. */
const CONTACT_MS = 150;
/** By then a touch answers to hand and ear, so that they have it in 100 ms. (ours) */
const FEEL_MS = 60;
/** A finger that has moved by more may be scrolling, and is answered only once it counts. (ours) */
const STILL_PX = 8;
/** By then a short touch is told from a drop of water: the drops round it have shown themselves. (ours) */
const JUDGE_MS = 120;
/** 10 mm: a finger that has left the button by more meant something else. */
const SLIP_PX = 63;
/** The same button again within this time is one press. */
export const REPEAT_MS = 1000;
/** How long after a touch has ended its click may still come. */
const CLICK_MS = 400;

/** Whole milliseconds since a touch, as the core takes them. */
export function ago(touched: number): number {
  return Math.max(0, Math.round(performance.now() - touched));
}

export interface Press {
  /** `touched` is `performance.now()` at the moment of contact. */
  commit: (touched: number) => void;
  /** The same button again within a second: no press of its own. `first` is the moment of the one that counts. */
  again?: ((touched: number, first: number) => void) | undefined;
  /** A finger is down, or no longer. */
  down?: (down: boolean) => void;
  /** Counts only on lifting: for buttons in a list that is scrolled. The time is the contact's all the same. */
  lift?: boolean;
  /** It makes a mark: hand and ear are told as soon as it is a press, also while the finger still rests. */
  mark?: boolean;
  /** It is all of a wet glass: every other contact is elsewhere. */
  whole?: boolean;
}

/** One contact on a button. */
interface Held {
  id: number;
  touched: number;
  x: number;
  y: number;
  lifted: boolean;
  felt: boolean;
  frame: number;
  judge: ReturnType<typeof setTimeout> | undefined;
  contact: ReturnType<typeof setTimeout> | undefined;
}

/**
 * The time of a mark is the first contact; it counts on lifting inside the button, or after 150 ms. A contact that lifts
 * sooner than a finger in water would is judged 120 ms after it began, by the drops that came round it; hand and ear are told
 * before that, and told again in the rare case that it was a drop. Each contact on a button is followed by itself, so that a
 * drop takes nothing from the finger beside it.
 */
export const press: Action<HTMLElement, Press> = (node, initial) => {
  let options = initial;
  const held = new Map<number, Held>();
  /** Contacts that lifted and wait to be judged. */
  const short = new Set<Held>();
  /** Contacts that began here and are still down. */
  const mine = new Set<number>();
  let last = -Infinity;

  const forget = (one: Held): void => {
    cancelAnimationFrame(one.frame);
    clearTimeout(one.judge);
    clearTimeout(one.contact);
    short.delete(one);
    for (const [id, other] of held) if (other === one) held.delete(id);
    options.down?.(held.size > 0);
  };
  const drop = (one: Held): void => {
    forget(one);
    if (one.felt) unfeelMark(one.touched);
  };
  const commit = (one: Held): void => {
    forget(one);
    count(one.touched);
  };
  const count = (touched: number): void => {
    if (!options.lift && touched - last < REPEAT_MS) {
      options.again?.(touched, last);
      return;
    }
    last = touched;
    settle();
    if (options.mark) feelMark(touched);
    options.commit(touched);
  };
  const isDrop = (one: Held): boolean => water.wet() || water.others(one.id, one.touched, JUDGE_MS, options.whole ? null : node);
  const feel = (one: Held): void => {
    if (one.lifted && isDrop(one)) return drop(one);
    if (!options.mark || one.touched - last < REPEAT_MS) return;
    one.felt = true;
    feelMark(one.touched);
  };
  // By frames: while a finger is down Chromium holds back timers for a tenth of a second.
  const soon = (one: Held): void => {
    if (performance.now() - one.touched >= FEEL_MS) feel(one);
    else one.frame = requestAnimationFrame(() => soon(one));
  };
  const judge = (one: Held): void => {
    if (isDrop(one)) drop(one);
    else commit(one);
  };

  const pointerdown = (event: PointerEvent): void => {
    if (event.button !== 0 || (node instanceof HTMLButtonElement && node.disabled)) return;
    const known = held.get(event.pointerId);
    if (known) drop(known);
    const one: Held = { id: event.pointerId, touched: event.timeStamp, x: event.clientX, y: event.clientY, lifted: false, felt: false, frame: 0, judge: undefined, contact: undefined };
    held.set(event.pointerId, one);
    mine.add(event.pointerId);
    if (!options.lift) {
      soon(one);
      one.judge = setTimeout(() => one.lifted && judge(one), JUDGE_MS);
      one.contact = setTimeout(() => commit(one), CONTACT_MS);
    }
    options.down?.(true);
  };
  const pointermove = (event: PointerEvent): void => {
    const one = held.get(event.pointerId);
    if (!one) return;
    if (distance(node, event) > SLIP_PX) drop(one);
    else if (Math.hypot(event.clientX - one.x, event.clientY - one.y) > STILL_PX) cancelAnimationFrame(one.frame);
  };
  const pointerup = (event: PointerEvent): void => {
    if (mine.delete(event.pointerId)) swallowClick(event);
    const one = held.get(event.pointerId);
    if (!one) return;
    if (distance(node, event) > 0) return drop(one);
    const long = event.timeStamp - one.touched >= WET_MS;
    if (long || event.pointerType !== 'touch') return commit(one);
    if (options.lift) return water.wet() ? drop(one) : commit(one);
    held.delete(event.pointerId);
    clearTimeout(one.contact);
    one.lifted = true;
    short.add(one);
  };
  const pointercancel = (event: PointerEvent): void => {
    mine.delete(event.pointerId);
    const one = held.get(event.pointerId);
    if (one) drop(one);
  };
  // A key, a switch or a screen reader gives a click without a finger.
  const click = (event: MouseEvent): void => {
    if (event.detail === 0) count(event.timeStamp);
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
      // A tap whose button goes in the same moment still counts.
      for (const one of [...short]) {
        judge(one);
      }
      for (const one of [...held.values()]) drop(one);
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
function swallowClick(lifted: PointerEvent): void {
  const swallow = (event: MouseEvent): void => {
    const here = Math.hypot(event.clientX - lifted.clientX, event.clientY - lifted.clientY) < STILL_PX;
    if (event.detail === 0 || !here) return;
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
