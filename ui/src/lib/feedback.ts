import type { Level } from '../gen/Level';
import { buzzer } from './buzz';
import { settings } from './settings.svelte';
import { sounder, type Tone } from './sound';

/** What is told to hand and ear beside the screen: what a touch came to, and the three levels of a time reminder. */
export type Cue = 'mark' | 'undo' | 'failed' | 'hold' | Level;

/** Milliseconds on, off, on. The reminders differ in how often and how long, and none comes faster than twice a second. (ours) */
export const BUZZ: Record<Cue, readonly number[]> = {
  mark: [40],
  undo: [20, 60, 20],
  failed: [120, 80, 120, 80, 120],
  hold: [15],
  note: [90],
  caution: [140, 460, 140],
  limit: [650, 450, 650],
};

const tone = (from: number, to: number, seconds: number, at = 0): Tone => ({ at, seconds, from, to });

/**
 * Soft single tones of a voice's range: one short; two that fall; two long ones that rise slowly. Never three or five in a
 * row, which is how a monitor calls. (ours)
 */
export const TONES: Record<Cue, readonly Tone[]> = {
  mark: [tone(660, 660, 0.07)],
  undo: [tone(440, 440, 0.07)],
  failed: [tone(220, 220, 0.35)],
  hold: [],
  note: [tone(520, 520, 0.45)],
  caution: [tone(440, 440, 0.4), tone(330, 330, 0.5, 0.6)],
  limit: [tone(196, 262, 1.1), tone(196, 262, 1.1, 1.6)],
};

/** Tells hand and ear; silent where the device cannot, or where it is switched off. */
export function feel(cue: Cue): void {
  if (settings.vibration) buzzer.buzz(BUZZ[cue]);
  if (settings.sound && TONES[cue].length > 0) sounder.play(TONES[cue]);
}

let felt: number | null = null;

/** Tells a mark by the moment of its touch: once, whether the finger still rests or its mark is being written. */
export function feelMark(touched: number): void {
  if (touched === felt) return;
  felt = touched;
  feel('mark');
}

/** A mark that was told already is none: the finger slipped away. */
export function unfeelMark(touched: number): void {
  if (touched === felt) feel('undo');
}
