import { type FluentBundle, FluentResource } from '@fluent/bundle';
import { bundleOf } from './language.svelte';

/** English made up to look like another language: it shows what is clipped, what is no message, and what runs the wrong way. */
const ACCENTED: Record<string, string> = { a: 'å', c: 'ç', e: 'é', i: 'î', n: 'ñ', o: 'ö', u: 'û', y: 'ý', A: 'Å', C: 'Ç', E: 'É', I: 'Î', N: 'Ñ', O: 'Ö', U: 'Û' };
const LONGER = 0.4;
const RIGHT_TO_LEFT = '\u202e';
const END = '\u202c';

/** Accented, and longer by two fifths: its vowels are doubled until it is. */
export function accented(words: string): string {
  let more = Math.round(words.trim().length * LONGER);
  return words.replace(/[a-zA-Z]/g, (letter) => {
    const other = ACCENTED[letter] ?? letter;
    if (more <= 0 || !/[aeiouy]/i.test(letter)) return other;
    more -= 1;
    return other + other.toLowerCase();
  });
}

/** Word for word marked as read from right to left. */
export function mirrored(words: string): string {
  return words.replace(/[^\s]*[a-zA-Z][^\s]*/g, (word) => `${RIGHT_TO_LEFT}${word}${END}`);
}

/** `pseudo` is longer, `pseudo-rtl` runs from right to left. Both count and write figures as English does. */
export function pseudo(name: string, english: string): FluentBundle {
  const rtl = name.endsWith('-rtl');
  const bundle = bundleOf('en', english, rtl ? mirrored : accented);
  const own = new FluentResource(`language-name = ${name}\nlanguage-direction = ${rtl ? 'rtl' : 'ltr'}`);
  bundle.addResource(own, { allowOverrides: true });
  return bundle;
}
