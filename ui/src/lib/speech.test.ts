import { expect, it, vi } from 'vitest';
import { Speech, type Speaker } from './speech';

it('passes sentences on in order, and tells the window of each call', () => {
  const heard: string[] = [];
  const told = vi.fn();
  vi.stubGlobal('window', { dispatchEvent: (event: CustomEvent) => told(event.detail) });
  const speaker: Speaker = { available: () => true, watch: () => () => {}, say: (text) => heard.push(text), stop: () => heard.push('stop') };
  const speech = new Speech(speaker);
  speech.say('one', 'two');
  speech.stop();
  expect(heard).toEqual(['one', 'two', 'stop']);
  expect(told.mock.calls.map(([detail]) => detail)).toEqual([{ call: 'say', text: 'one' }, { call: 'say', text: 'two' }, { call: 'stop' }]);
  expect(speech.available).toBe(true);
  vi.unstubAllGlobals();
});
