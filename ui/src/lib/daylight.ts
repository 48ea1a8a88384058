import { device } from './device';
import { themeOf, type Theme } from './light';
import { settings } from './settings.svelte';

/** How often the hour is looked at, ms. */
const LOOK_MS = 30_000;

/** Shows the theme that is chosen, or the one for the light round the device. It never changes under a finger. */
class Daylight {
  #shown: Theme | null = null;
  #lux: number | null = null;
  #fingers = new Set<number>();

  show = (): void => {
    if (this.#fingers.size > 0) return;
    const dark = typeof matchMedia === 'function' && matchMedia('(prefers-color-scheme: dark)').matches;
    const theme = themeOf(settings.light, { dark, hour: new Date().getHours(), lux: this.#lux });
    if (theme !== this.#shown) document.documentElement.dataset['theme'] = this.#shown = theme;
    document.documentElement.dataset['hand'] = settings.hand;
  };

  /** Follows the light from now on; gives what ends it. */
  watch(): () => void {
    const down = ({ pointerId }: PointerEvent): void => void this.#fingers.add(pointerId);
    const up = ({ pointerId }: PointerEvent): void => {
      this.#fingers.delete(pointerId);
      // Once the touch has done its work.
      setTimeout(this.show);
    };
    const scheme = matchMedia('(prefers-color-scheme: dark)');
    const timer = setInterval(this.show, LOOK_MS);
    const still = device.watchLight((lux) => {
      this.#lux = lux;
      this.show();
    });
    scheme.addEventListener('change', this.show);
    window.addEventListener('pointerdown', down, true);
    window.addEventListener('pointerup', up, true);
    window.addEventListener('pointercancel', up, true);
    this.show();
    return () => {
      clearInterval(timer);
      still();
      scheme.removeEventListener('change', this.show);
      window.removeEventListener('pointerdown', down, true);
      window.removeEventListener('pointerup', up, true);
      window.removeEventListener('pointercancel', up, true);
    };
  }
}

export const daylight = new Daylight();
