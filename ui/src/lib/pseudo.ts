/** English made up to look like another language: it shows what is clipped, what is no message, and what runs the wrong way. */
const ACCENTED: Record<string, string> = { a: 'å', c: 'ç', e: 'é', i: 'î', n: 'ñ', o: 'ö', u: 'û', y: 'ý', A: 'Å', C: 'Ç', E: 'É', I: 'Î', N: 'Ñ', O: 'Ö', U: 'Û' };
const LONGER = 0.4;
const RIGHT_TO_LEFT = '\u202e';
const END = '\u202c';

/** Accented, and longer by two fifths: its vowels are drawn out until it is. */
export function accented(words: string): string {
  const more = Math.round(words.trim().length * LONGER);
  const vowels = words.match(/[aeiouy]/gi)?.length ?? 0;
  let place = 0;
  return words.replace(/[a-zA-Z]/g, (letter) => {
    const other = ACCENTED[letter] ?? letter;
    if (!/[aeiouy]/i.test(letter)) return other;
    const times = Math.floor(more / vowels) + (place++ < more % vowels ? 1 : 0);
    return other + other.toLowerCase().repeat(times);
  });
}

/** Word for word marked as read from right to left. */
export function mirrored(words: string): string {
  return words.replace(/[^\s]*[a-zA-Z][^\s]*/g, (word) => `${RIGHT_TO_LEFT}${word}${END}`);
}
