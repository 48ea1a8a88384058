import type { Message } from '../gen/Message';
import { momentWords } from './when';

const KILO = 1000;
const DAY_MS = 86_400_000;

/** The size of a file in words: whole kB, from 1 MB on with one place. */
export function size(bytes: number): Message {
  if (bytes < KILO * KILO) return { id: 'ui-size-kb', args: { n: Math.max(1, Math.round(bytes / KILO)) } };
  return { id: 'ui-size-mb', args: { n: Math.round(bytes / (KILO * KILO / 10)) / 10 } };
}

/** How long ago a backup was made, counted in calendar days of this device. `made` is `2026-11-25 03:12`. */
export function age(made: string, now: Date): Message {
  const [year, month, day] = made.slice(0, 10).split('-').map(Number);
  const then = Date.UTC(year ?? 0, (month ?? 1) - 1, day ?? 1);
  const days = Math.round((Date.UTC(now.getFullYear(), now.getMonth(), now.getDate()) - then) / DAY_MS);
  return days < 0 ? { id: 'ui-backup-age-at', args: { made: momentWords(made) } } : { id: 'ui-backup-age', args: { days } };
}
