import type { Alarms } from './alarms';
import type { Buzzer } from './buzz';
import type { Camera } from './camera';
import type { Device } from './device';
import type { LockScreen } from './lockscreen';
import type { Sharer } from './share';
import type { Sounder } from './sound';
import type { Speaker } from './speech';
import type { VolumeKeys } from './volume';

/** What a device does beside the screen. Each has the web's own way; a phone's shell may give a better one. */
export interface Ports {
  sounder: Sounder;
  buzzer: Buzzer;
  speaker: Speaker;
  device: Device;
  /** Without one a file's path is shown. */
  sharer: Sharer;
  /** Without one the page alone tells of a time, while it is open. */
  alarms: Alarms;
  /** Without one nothing stands there. */
  lockScreen: LockScreen;
  /** Without one the keys come by themselves, or not at all. */
  volumeKeys: VolumeKeys;
  /** Without one the web view's own is used, which may leave a file behind. */
  camera: Camera;
}

declare global {
  interface Window {
    /** Set by a shell before the page loads: what is given here takes the place of the web's own. */
    secundine?: Partial<Ports>;
  }
}

/** What the shell gives; nothing in a browser. */
export function given<K extends keyof Ports>(port: K): Partial<Ports>[K] {
  return typeof window === 'undefined' ? undefined : window.secundine?.[port];
}
