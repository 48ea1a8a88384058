import type { Answer } from '../gen/Answer';
import type { ItemView } from '../gen/ItemView';
import type { Message } from '../gen/Message';
import type { VolumeKey } from './volume';
import { say, ui } from './words';

/** An answer that can be heard and taken with two keys; none leaves the item open and goes on. */
export interface Heard {
  words: string;
  answer: Answer | null;
}

/** How long an answer that was read can be taken: after that a press may be one of chance. (ours) */
const FRESH_MS = 30_000;

/** The answers of an item as they are heard, each with its number: one of a few choices; of several, that none holds, or all. */
export function answers(item: ItemView): Heard[] {
  const one = item.kind === 'choice' ? item.options.map(({ option, label }): Heard => ({ words: say(label), answer: { answer: 'choice', option } })) : [];
  const none = item.options.filter(({ option }) => option === item.none).map(({ option, label }): Heard => ({ words: say(label), answer: { answer: 'choices', options: [option] } }));
  const each = item.options.map(({ option }) => option).filter((option) => option !== item.none);
  const all: Heard[] = item.all ? [{ words: ui('ui-exam-all-of-these'), answer: { answer: 'choices', options: each } }] : [];
  const options = [...one, ...none, ...all];
  const ways: Heard[] = [
    { words: ui('ui-exam-could-not-tell'), answer: { answer: 'could_not_tell' } },
    { words: ui('ui-aloud-leave'), answer: null },
  ];
  return [...options, ...ways].map((heard, at) => ({ ...heard, words: numbered(at, heard.words) }));
}

function numbered(at: number, option: string): string {
  return ui('ui-aloud-option', { n: at + 1, option });
}

/** What is read of an item: the question, how to look, what stands recorded, then the options with their numbers. */
export function reading(item: ItemView, place: number, all: number): string[] {
  const head = [ui('ui-aloud-item', { n: place + 1, all, question: say(item.question) }), say(item.how)];
  if (item.answer_words) head.push(ui('ui-aloud-has', { answer: say(item.answer_words) }));
  // Of several choices two keys take none or all, under numbers of their own.
  const options = item.options.map(({ label }, at) => (item.kind === 'choice' ? numbered(at, say(label)) : say(label)));
  return item.kind === 'choice' ? [...head, ...options] : [...head, ...options, ui('ui-aloud-by-touch')];
}

/** What stands recorded of an item, as the timeline says it. */
export function answered(item: ItemView): Message {
  return { id: 'fact-examined', args: { item: item.question, answer: item.answer_words ?? { id: 'ui-exam-open' } } };
}

export interface Hands {
  /** The answers of the item that is on the screen. */
  answers: () => Heard[];
  say: (text: string) => void;
  /** Says the whole item again. */
  again: () => void;
  /** Takes an answer; what is recorded is spoken back. */
  take: (answer: Answer | null) => void;
  /** Takes back what was recorded last; false where nothing can be. */
  takeBack: () => boolean;
}

/**
 * Answering with two keys. Up reads the next answer. Down takes the answer that was read; where none was, it takes back what
 * was just recorded, else says the item again. So one press alone never records, and none records in silence.
 */
export class TwoKeys {
  /** Which answer was read last; none at the beginning of an item. */
  at = $state<number | null>(null);
  #readAt = -Infinity;

  constructor(readonly hands: Hands) {}

  /** Another item is on the screen. */
  begin(): void {
    this.at = null;
  }

  press(key: VolumeKey, now: number): void {
    const heard = this.hands.answers();
    const fresh = this.at !== null && now - this.#readAt <= FRESH_MS;
    if (key === 'up') {
      this.at = this.at === null ? 0 : (this.at + 1) % heard.length;
      this.#readAt = now;
      this.hands.say(heard[this.at]?.words ?? '');
      return;
    }
    const taken = fresh && this.at !== null ? heard[this.at] : undefined;
    this.begin();
    if (taken) this.hands.take(taken.answer);
    else if (!this.hands.takeBack()) this.hands.again();
  }
}
