import { figure } from './figure';

/** One number that the pad fills. `most` is the greatest that the core takes; `decimals` moves the point for the eye only. */
export interface PadField<K extends string = string> {
  key: K;
  label: string;
  unit: string;
  most: number;
  decimals?: number;
}

/** The values of the fields with the one that the pad writes into; `fresh` until a figure of it is typed. */
export interface PadState<K extends string> {
  values: Record<K, number | null>;
  place: number;
  fresh: boolean;
}

/** A value as it stands in its field. */
export function shownAs(value: number | null, { decimals = 0 }: PadField): string {
  return value === null ? '' : figure((value / 10 ** decimals).toFixed(decimals));
}

/**
 * The state after one key. A figure goes into the field in turn, beginning anew where it has just been come to. The pad
 * moves on by itself once no further figure fits; deleting in a field just come to leads back to the one before.
 */
export function padKey<K extends string>(state: PadState<K>, fields: readonly PadField<K>[], key: string): PadState<K> {
  const field = fields[state.place];
  if (!field) return state;
  const last = fields.length - 1;
  const value = state.values[field.key];
  const put = (next: number | null): PadState<K> => ({ ...state, values: { ...state.values, [field.key]: next }, fresh: false });
  if (key === 'next') return { ...state, place: Math.min(state.place + 1, last), fresh: true };
  if (key === 'back') {
    if (state.fresh && value === null && state.place > 0) return { ...state, place: state.place - 1, fresh: false };
    return put(value === null || value < 10 ? null : Math.floor(value / 10));
  }
  const typed = (state.fresh ? 0 : (value ?? 0)) * 10 + Number(key);
  if (typed > field.most) return state;
  const full = typed * 10 > field.most && state.place < last;
  return full ? { ...put(typed), place: state.place + 1, fresh: true } : put(typed);
}
