import { given } from './ports';

/** A soft tone. Begins so many seconds from now, lasts so many, and goes from one pitch to another, Hz. */
export interface Tone {
  at: number;
  seconds: number;
  from: number;
  to: number;
}

/** What can be heard on this device. */
export interface Sounder {
  /** Plays the tones; silent where the device cannot. */
  play: (tones: readonly Tone[]) => void;
}

/** Loudest part of a tone, of the device's own volume. (ours) */
const LOUD = 0.2;
/** A mark answers at once; a longer tone swells, so that it startles nobody. Part of its length, at most so many seconds. */
const SWELL = 0.3;
const SWELL_MOST = 0.25;

function web(): Sounder {
  let audio: AudioContext | undefined;
  const one = (context: AudioContext, { at, seconds, from, to }: Tone): void => {
    const start = context.currentTime + at;
    const source = context.createOscillator();
    const volume = context.createGain();
    source.frequency.setValueAtTime(from, start);
    source.frequency.linearRampToValueAtTime(to, start + seconds);
    volume.gain.setValueAtTime(0.001, start);
    volume.gain.linearRampToValueAtTime(LOUD, start + Math.min(seconds * SWELL, SWELL_MOST));
    volume.gain.exponentialRampToValueAtTime(0.001, start + seconds);
    source.connect(volume).connect(context.destination);
    source.start(start);
    source.stop(start + seconds);
  };
  return {
    play: (tones) => {
      if (!('AudioContext' in window)) return;
      try {
        audio ??= new AudioContext();
        if (audio.state === 'suspended') void audio.resume();
        for (const tone of tones) one(audio, tone);
      } catch {
        // A device without sound still marks, shows and vibrates.
      }
    },
  };
}

export const sounder: Sounder = given('sounder') ?? web();
