import { given } from './ports';

/** The phone's volume keys, which a shell takes from the system only while a screen asks for them. */
export interface VolumeKeys {
  /** From now on they come as key events of the window; gives back what ends it. */
  take: () => () => void;
}

/** The two keys that a thumb finds without looking. */
export type VolumeKey = 'up' | 'down';

/** The phone's volume keys, as its shell hands them to the page; on a desk the keys of a page, which a clicker sends too. */
const KEYS: Record<string, VolumeKey> = { AudioVolumeUp: 'up', AudioVolumeDown: 'down', PageUp: 'up', PageDown: 'down' };

/** A hand that grips the phone presses both keys: two presses closer than this are one, and mean nothing more. (ours) */
const APART_MS = 300;

/** Tells each press of a volume key, once however long it is held; gives a way to stop. */
export function watchVolume(pressed: (key: VolumeKey, at: number) => void): () => void {
  let last = -Infinity;
  const look = (event: KeyboardEvent): void => {
    const key = KEYS[event.key];
    if (!key) return;
    event.preventDefault();
    if (event.repeat) return;
    const near = event.timeStamp - last < APART_MS;
    last = event.timeStamp;
    if (!near) pressed(key, event.timeStamp);
  };
  window.addEventListener('keydown', look);
  const leave = given('volumeKeys')?.take();
  return () => {
    leave?.();
    window.removeEventListener('keydown', look);
  };
}
