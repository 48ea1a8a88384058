import type { BirthView } from '../gen/BirthView';
import type { ClockView } from '../gen/ClockView';
import type { Due } from '../gen/Due';
import type { Fact } from '../gen/Fact';
import type { Finding } from '../gen/Finding';
import type { Level } from '../gen/Level';
import type { LineView } from '../gen/LineView';
import type { NextMark } from '../gen/NextMark';

// Invented, to look at: nothing here is a clinical value.

export const RUNNING: ClockView = { elapsed_ms: 754_000, text: '12:34', running: true, speed: 1, certainty: 'measured' };
export const STOPPED: ClockView = { ...RUNNING, elapsed_ms: 3_723_000, text: '1:02:03', running: false };

export const MARK: NextMark = { fact: { kind: 'placenta_born', data: { babies: [1] } }, label: { id: 'fact-placenta-born', args: { of: 1, babies: '1' } } };

export const DUE: Due = { id: 'sample', in_ms: 95_000, level: 'note', message: { id: 'fact-concern' }, source: 'sample', status: 'choice', armed: true };

export function finding(level: Level): Finding {
  const threshold = { source: 'Sample', status: 'memory', words: null } as const;
  return { about: { about: 'third_stage' }, state: level === 'note' ? 'near' : 'passed', level, message: { id: 'ui-welcome-lead' }, rests_on: [], threshold };
}

function line(entry: string, fact: Fact, id: string, clock: string, since_birth: string): LineView {
  const message = { id, args: { of: 1, baby: 1, babies: '1', volume: 150 } };
  const rest = { date: '2026-11-26', author: 'Ida Lindqvist, midwife', written: null, estimated: false, late: false, after_signing: false, retracted: false, again: [], unnamed: false, common: null };
  return { entry, clock, since_birth, message, fact, earlier: [], oddities: [], ...rest };
}

/** As much of a birth as the thread and the strand draw. */
export const VIEW = {
  babies: [{ baby: 1, cord: RUNNING }],
  timeline: [
    line('1', { kind: 'baby_born', data: { baby: 1 } }, 'fact-baby-born', '03:12:40', '0:00'),
    line('2', { kind: 'cord_clamped', data: { baby: 1 } }, 'fact-cord-clamped', '03:21:02', '8:22'),
    line('3', { kind: 'blood_loss', data: { method: 'jug', volume: 150 } }, 'fact-loss-jug', '03:24:10', '11:30'),
  ],
} as unknown as BirthView;
