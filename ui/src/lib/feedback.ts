import { settings } from './settings.svelte';

/** What is told to hand and ear beside the screen. */
export type Cue = 'mark' | 'undo' | 'failed' | 'hold' | 'reminder';

const BUZZ: Record<Cue, number[]> = { mark: [40], undo: [20, 60, 20], failed: [120, 80, 120, 80, 120], hold: [15], reminder: [80, 120, 80] };
/** Hz and seconds. Soft single tones, nothing like a monitor's. */
const TONE: Record<Cue, [number, number] | null> = { mark: [660, 0.07], undo: [440, 0.07], failed: [220, 0.35], hold: null, reminder: [520, 0.4] };

let audio: AudioContext | undefined;

/** Tells hand and ear; silent where the device cannot, or where it is switched off. */
export function feel(cue: Cue): void {
  if (settings.vibration && 'vibrate' in navigator) navigator.vibrate(BUZZ[cue]);
  const tone = TONE[cue];
  if (settings.sound && tone && 'AudioContext' in window) play(...tone);
}

function play(hertz: number, seconds: number): void {
  try {
    audio ??= new AudioContext();
    if (audio.state === 'suspended') void audio.resume();
    const start = audio.currentTime;
    const source = audio.createOscillator();
    const volume = audio.createGain();
    source.frequency.value = hertz;
    volume.gain.setValueAtTime(0.001, start);
    volume.gain.linearRampToValueAtTime(0.2, start + 0.01);
    volume.gain.exponentialRampToValueAtTime(0.001, start + seconds);
    source.connect(volume).connect(audio.destination);
    source.start(start);
    source.stop(start + seconds);
  } catch {
    // A device without sound still marks, shows and vibrates.
  }
}
