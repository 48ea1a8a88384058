import { expect, it } from 'vitest';
import { Tape } from './tape';

it('counts what is recorded, without the pauses', () => {
  const tape = new Tape(5000, null);
  expect(tape.ms(9000)).toBe(4000);
  tape.pause(9000);
  expect(tape.ms(60_000)).toBe(4000);
  tape.resume(60_000);
  tape.resume(61_000);
  expect(tape.ms(62_000)).toBe(6000);
  expect(tape.chapters(62_000)).toEqual([]);
});

it('begins a chapter with each item, at its place in the recording', () => {
  const tape = new Tape(0, 'amnion');
  tape.turn('amnion', 2000);
  tape.pause(4000);
  tape.resume(10_000);
  tape.turn('chorion', 12_000);
  tape.turn(null, 14_000);
  tape.turn('chorion', 15_000);
  expect(tape.chapters(16_000)).toEqual([
    { item: 'amnion', at_ms: 0 },
    { item: 'chorion', at_ms: 6000 },
  ]);
});

it('leaves out items that were only passed', () => {
  const tape = new Tape(0, 'amnion');
  tape.turn('chorion', 5000);
  tape.turn('vessels', 5400);
  tape.turn('knots', 5800);
  expect(tape.chapters(9000)).toEqual([
    { item: 'amnion', at_ms: 0 },
    { item: 'knots', at_ms: 5000 },
  ]);
  const back = new Tape(0, 'amnion');
  back.turn('chorion', 5000);
  back.turn('amnion', 5500);
  expect(back.chapters(9000)).toEqual([{ item: 'amnion', at_ms: 0 }]);
});
