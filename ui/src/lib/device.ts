import type { DeviceTold } from '../gen/DeviceTold';
import { keepAwake } from './awake';
import { given } from './ports';

/** What the device tells of itself, and does for the screen. */
export interface Device {
  /** How it stands now; what it cannot tell is none. */
  tell: () => Promise<DeviceTold>;
  /** Keeps the screen on; gives back what ends it. */
  keepAwake: () => () => void;
  /** Tells the light that falls on it, lux, each time it changes; gives a way to stop. */
  watchLight: (told: (lux: number) => void) => () => void;
  /** Whether the line is paid for by its bytes; none where a shell cannot tell, which leaves it to the web. */
  metered?: () => boolean | null;
}

interface Battery {
  level: number;
}
interface LightSensor extends EventTarget {
  illuminance: number;
  start: () => void;
  stop: () => void;
}

interface Line {
  type?: string;
  saveData?: boolean;
}

const web: Device = {
  tell: async () => ({
    notifications: 'Notification' in window ? Notification.permission === 'granted' : null,
    exact_reminders: null,
    volume: null,
    battery: await battery(),
    awake: 'wakeLock' in navigator,
    // A browser that could vibrate does not tell whether there is a motor.
    vibration: 'vibrate' in navigator ? null : false,
  }),
  keepAwake,
  watchLight: (told) => {
    const Sensor = (window as { AmbientLightSensor?: new () => LightSensor }).AmbientLightSensor;
    if (!Sensor) return () => {};
    try {
      const sensor = new Sensor();
      sensor.addEventListener('reading', () => told(sensor.illuminance));
      sensor.start();
      return () => sensor.stop();
    } catch {
      // Not permitted: the clock decides.
      return () => {};
    }
  },
};

async function battery(): Promise<number | null> {
  const ask = (navigator as { getBattery?: () => Promise<Battery> }).getBattery;
  try {
    return ask ? Math.round((await ask.call(navigator)).level * 100) : null;
  } catch {
    return null;
  }
}

export const device: Device = given('device') ?? web;

/** Whether large things wait for another line. What nothing is told of is not metered. */
export function metered(): boolean {
  const told = device.metered?.() ?? null;
  if (told !== null) return told;
  const line = (navigator as { connection?: Line }).connection;
  return line?.type === 'cellular' || line?.saveData === true;
}
