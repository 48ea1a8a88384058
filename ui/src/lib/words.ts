import { FluentNumber, type Scope } from '@fluent/bundle';
import type { Arg } from '../gen/Arg';
import type { Message } from '../gen/Message';
import type { Act } from './facts';
import { figure } from './figure';
import { language } from './language.svelte';

/** A message in words: in English where the language lacks it, and its id as it stands where English does. */
export function say(message: Message): string {
  const found = language.find(message.id);
  if (!found?.entry.value) return message.id;
  const args: Record<string, string | FluentNumber> = {};
  for (const [name, value] of Object.entries(message.args ?? {})) args[name] = flat(value);
  const problems: Error[] = [];
  return found.bundle.formatPattern(found.entry.value, args, problems);
}

/** A message of the page's own. */
export function ui(id: `ui-${string}`, args?: Record<string, Arg>): string {
  return say(args ? { id, args } : { id });
}

/** A message that stands by itself: it begins with a capital letter. */
export function sentence(message: Message): string {
  const words = say(message);
  return words.charAt(0).toUpperCase() + words.slice(1);
}

/** One of a few, with what stands on its button. */
export interface Choice<T> {
  value: T;
  label: string;
  /** A sign beside the words. */
  sign?: Act;
}

/** The word of one value of a family of the catalogue, such as `tear-third-a`, as a sentence of its own. */
export function word(family: string, value: string): string {
  return sentence({ id: `${family}-${value.replaceAll('_', '-')}` });
}

/** Values of a family, each with its word. */
export function worded<T extends string>(family: string, values: readonly T[]): Choice<T>[] {
  return values.map((value) => ({ value, label: word(family, value) }));
}

function flat(value: Arg): string | FluentNumber {
  if (typeof value === 'object') return say(value);
  return typeof value === 'number' ? new Figure(value) : value;
}

/** A number that stands as the record prints it: no grouping, and the decimal sign of the catalogue. */
class Figure extends FluentNumber {
  override toString(_scope?: Scope): string {
    return figure(String(this.value));
  }
}
