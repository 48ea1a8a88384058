import type { Light } from './light';

/** Minutes without a touch after which the practice rests. */
export const REST_AFTER = [1, 5, 15, 30] as const;
/** Minutes between two spoken times; 0 is never. */
export const SPOKEN_EVERY = [0, 5, 10, 15, 30] as const;
/** Seconds between two times that a screen reader is told; 0 is never. */
export const READER_EVERY = [30, 60, 300, 0] as const;
const LIGHTS: readonly Light[] = ['auto', 'day', 'night', 'red'];
const KEY = 'secundine-settings';

interface Kept {
  language: string | null;
  /** The light that was chosen. */
  theme: Light;
  sound: boolean;
  vibration: boolean;
  restAfter: number;
  readAloud: boolean;
  measuring: boolean;
  spokenEvery: number;
  readerEvery: number;
  hand: 'right' | 'left';
  volumeMarks: boolean;
}

/** How this device looks and sounds. Nothing of a client is kept here. */
class Settings {
  /** BCP 47 tag of the language that was chosen by hand; none, as the device speaks. */
  language = $state<string | null>(null);
  light = $state<Light>('auto');
  sound = $state(true);
  vibration = $state(true);
  /** Minutes: one of [`REST_AFTER`]. */
  restAfter = $state(5);
  /** The examination is read aloud. */
  readAloud = $state(false);
  /** Whether a disc can be measured on a photograph. */
  measuring = $state(false);
  /** Minutes: one of [`SPOKEN_EVERY`]. */
  spokenEvery = $state(0);
  /** Seconds: one of [`READER_EVERY`]. */
  readerEvery = $state(60);
  /** The hand that holds the phone. */
  hand = $state<'right' | 'left'>('right');
  /** A volume key marks a moment while a birth is timed. */
  volumeMarks = $state(true);

  constructor() {
    const kept = read();
    this.language = kept.language ?? null;
    this.light = one(LIGHTS, kept.theme, 'auto');
    this.sound = kept.sound ?? true;
    this.vibration = kept.vibration ?? true;
    this.measuring = kept.measuring ?? false;
    this.restAfter = one(REST_AFTER, kept.restAfter, 5);
    this.readAloud = kept.readAloud ?? false;
    this.spokenEvery = one(SPOKEN_EVERY, kept.spokenEvery, 0);
    this.readerEvery = one(READER_EVERY, kept.readerEvery, 60);
    this.hand = kept.hand === 'left' ? 'left' : 'right';
    this.volumeMarks = kept.volumeMarks ?? true;
  }

  /** Keeps the choices. */
  keep(): void {
    const { language, light: theme, sound, vibration, restAfter, readAloud, measuring, spokenEvery, readerEvery, hand, volumeMarks } = this;
    const kept: Kept = { language, theme, sound, vibration, restAfter, readAloud, measuring, spokenEvery, readerEvery, hand, volumeMarks };
    try {
      localStorage.setItem(KEY, JSON.stringify(kept));
    } catch {
      // A full or forbidden storage only means that the choice is asked again next time.
    }
  }
}

/** The kept value where it is one of the choices. */
function one<T>(choices: readonly T[], kept: unknown, usual: T): T {
  return choices.find((choice) => choice === kept) ?? usual;
}

function read(): Partial<Kept> {
  try {
    return JSON.parse(localStorage.getItem(KEY) ?? '{}') as Partial<Kept>;
  } catch {
    return {};
  }
}

export const settings = new Settings();
