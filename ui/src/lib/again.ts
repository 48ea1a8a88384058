import type { BirthId } from '../gen/BirthId';
import type { EntryId } from '../gen/EntryId';
import type { Fact } from '../gen/Fact';
import { ago } from './touch';
import { ask } from './transport';

/** A mark that is on its way to the disk, or there. */
export type Made = Promise<{ birth: BirthId; entry: EntryId }>;

/** Keeps a touch that came again on the button of a mark, beside the mark. Nothing waits for it. */
export async function keepAgain(made: Made | undefined, touched: number, first: number): Promise<void> {
  try {
    const mark = await made;
    if (!mark) return;
    const fact: Fact = { kind: 'touched_again', data: { entry: mark.entry, after_ms: Math.max(0, Math.round(touched - first)) } };
    await ask('record', { birth: mark.birth, fact, at: { at: 'now', ago_ms: ago(touched) } });
  } catch {
    // Where the mark itself is not saved, that is told; what came after it is not worth a second word.
  }
}
