import { expect, it } from 'vitest';
import type { ItemView } from '../gen/ItemView';
import { answers, reading, TwoKeys, type Heard } from './aloud.svelte';

const amnion = {
  item: 'amnion',
  part: 'membranes',
  cord: null,
  none: null,
  all: false,
  quick: [],
  stretches: [],
  kind: 'choice',
  question: { id: 'exam-amnion' },
  how: { id: 'exam-amnion-how' },
  options: ['whole', 'ragged', 'missing'].map((option) => ({ option, label: { id: `exam-amnion-${option}` } })),
  min: 0,
  max: 0,
  answer: null,
  answer_words: null,
  entry: null,
  level: null,
} satisfies ItemView;
const length = { ...amnion, item: 'cord-length', kind: 'mm', question: { id: 'exam-cord-length' }, how: { id: 'exam-cord-length-how' }, options: [] } satisfies ItemView;

/** Two keys over an item, and what they did. */
function keys(undoable = false): { did: string[]; press: (key: 'up' | 'down', at: number) => void } {
  const did: string[] = [];
  const two = new TwoKeys({
    answers: () => answers(amnion),
    say: (text) => did.push(text),
    again: () => did.push('again'),
    take: (answer) => did.push(`took ${answer?.answer === 'choice' ? answer.option : (answer?.answer ?? 'nothing')}`),
    takeBack: () => {
      if (undoable) did.push('took back');
      return undoable;
    },
  });
  return { did, press: (key, at) => two.press(key, at) };
}

it('reads the question, how to look, and each option with its number', () => {
  expect(reading(amnion, 2, 16)).toEqual([
    'Item 3 of 16. Amnion',
    'The inner layer, smooth. Strip it towards the cord and see whether it makes a whole bag.',
    '1: whole',
    '2: ragged',
    '3: part missing',
  ]);
  expect(reading({ ...amnion, answer_words: { id: 'exam-amnion-ragged' } }, 2, 16)[2]).toBe('Recorded: ragged');
});

it('says that a measure is typed, and offers only the ways past it', () => {
  expect(reading(length, 8, 16).at(-1)).toBe('Answered by touch, or said in a voice note.');
  expect(answers(length).map(({ answer }: Heard) => answer?.answer ?? null)).toEqual(['could_not_tell', null]);
});

it('takes an answer only once it was read', () => {
  const { did, press } = keys();
  press('down', 0);
  press('up', 1000);
  press('up', 2000);
  press('down', 3000);
  press('down', 4000);
  expect(did).toEqual(['again', '1: whole', '2: ragged', 'took ragged', 'again']);
});

it('goes round, with the ways past the item at the end', () => {
  const { did, press } = keys();
  for (let n = 0; n < 6; n += 1) press('up', n * 1000);
  expect(did.slice(3)).toEqual(['4: Looked, could not tell', '5: leave it open', '1: whole']);
  press('down', 7000);
  expect(did.at(-1)).toBe('took whole');
});

it('takes nothing that was read half a minute ago', () => {
  const { did, press } = keys();
  press('up', 0);
  press('down', 30_001);
  press('up', 40_000);
  press('down', 70_000);
  expect(did).toEqual(['1: whole', 'again', '1: whole', 'took whole']);
});

it('takes back with the key that recorded, as long as nothing else was read', () => {
  const { did, press } = keys(true);
  press('up', 0);
  press('down', 1000);
  press('down', 2000);
  expect(did).toEqual(['1: whole', 'took whole', 'took back']);
});
