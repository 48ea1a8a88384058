import type { Medicine } from '../gen/Medicine';

/** A medicine of the practice's list in one line: name, dose, route. */
export function medicineLine({ name, dose, route }: Medicine): string {
  return [name, dose, route].filter((part) => part.trim() !== '').join(' ');
}
