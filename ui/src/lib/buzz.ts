import { given } from './ports';

/** What can be felt on this device. */
export interface Buzzer {
  /** Milliseconds on, off, on, and so on; does nothing where the device cannot. */
  buzz: (pattern: readonly number[]) => void;
}

const web: Buzzer = {
  buzz: (pattern) => {
    if ('vibrate' in navigator) navigator.vibrate([...pattern]);
  },
};

export const buzzer: Buzzer = given('buzzer') ?? web;
