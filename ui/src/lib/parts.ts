import type { ItemView } from '../gen/ItemView';
import type { Part } from '../gen/Part';

/** The page's words for each part of the examination. */
export const PART_NAMES: Record<Part, `ui-${string}`> = {
  preparation: 'ui-part-preparation',
  'fetal-side': 'ui-part-fetal-side',
  membranes: 'ui-part-membranes',
  cord: 'ui-part-cord',
  'maternal-side': 'ui-part-maternal-side',
  disc: 'ui-part-disc',
  after: 'ui-part-after',
};

export interface PartProgress {
  part: Part;
  done: number;
  all: number;
}

/** How far each part is, in the order of work. */
export function progress(items: ItemView[]): PartProgress[] {
  const parts: PartProgress[] = [];
  for (const item of items) {
    let entry = parts.find((one) => one.part === item.part);
    if (!entry) parts.push((entry = { part: item.part, done: 0, all: 0 }));
    entry.all += 1;
    if (item.answer) entry.done += 1;
  }
  return parts;
}
