import type { Action } from 'svelte/action';

const ON = ['ArrowRight', 'ArrowDown'];
const BACK = ['ArrowLeft', 'ArrowUp'];

/**
 * The buttons of a group are one stop of the Tab key: the pressed one, else the first. Arrows go from one to the next, and
 * focus stays in the group where an answer takes the focused button away for a while.
 */
export const roving: Action<HTMLElement, boolean> = (group, initial) => {
  let on = initial;
  let last: HTMLElement | null = null;
  const buttons = (): HTMLButtonElement[] => [...group.querySelectorAll('button')].filter((each) => each.checkVisibility());
  const field = (): HTMLElement | null => group.querySelector('input');

  function order(): void {
    const all = buttons();
    const inside = all.find((each) => each === document.activeElement);
    const stop = inside ?? all.find((each) => each.ariaPressed === 'true') ?? all.find((each) => each.ariaChecked === 'true') ?? all[0];
    for (const each of all) {
      const index = !on || each === stop ? 0 : -1;
      if (each.getAttribute('tabindex') !== String(index)) each.tabIndex = index;
    }
    if (!on || last === null || document.activeElement !== document.body) return;
    const next = last.isConnected ? last : (field() ?? stop);
    if (next && !next.matches(':disabled')) next.focus();
  }
  const keydown = (event: KeyboardEvent): void => {
    if (!on || event.target instanceof HTMLInputElement) return;
    const by = ON.includes(event.key) ? 1 : BACK.includes(event.key) ? -1 : 0;
    const all = buttons().filter((each) => !each.disabled);
    const next = all[all.indexOf(event.target as HTMLButtonElement) + by];
    if (by === 0) return;
    event.preventDefault();
    next?.focus();
  };
  const focusin = (event: FocusEvent): void => {
    last = event.target as HTMLElement;
    order();
  };
  // A button that is taken away for a while loses focus to nothing; who goes elsewhere, goes to something.
  const focusout = (event: FocusEvent): void => {
    if (event.relatedTarget) last = null;
  };
  const pointerdown = (): void => {
    last = null;
  };

  const seen = new MutationObserver(order);
  seen.observe(group, { childList: true, subtree: true, attributeFilter: ['aria-pressed', 'aria-checked', 'disabled'] });
  group.addEventListener('keydown', keydown);
  group.addEventListener('focusin', focusin);
  group.addEventListener('focusout', focusout);
  document.addEventListener('pointerdown', pointerdown, true);
  order();
  return {
    update: (next) => {
      on = next;
      order();
    },
    destroy: () => {
      seen.disconnect();
      document.removeEventListener('pointerdown', pointerdown, true);
    },
  };
};
