import { describe, expect, it } from 'vitest';
import { figure, typedFigure } from './figure';
import { Language, language, nearest, type Shelf } from './language.svelte';
import { accented, mirrored } from './pseudo';
import { dateWords, momentWords } from './when';
import { say } from './words';

const HEAD = 'language-direction = ltr\nlanguage-status = machine-drafted\n';
const shelf: Shelf = {
  en: async () => 'language-name = English\nlanguage-status = reviewed\nlanguage-decimal = .\nonly-here = only in English\nboth = English',
  xx: async () => `${HEAD}language-name = Iks\nlanguage-decimal = ,\nlanguage-machine-drafted = iks iks\nboth = Iks`,
  yy: () => Promise.reject(new Error('gone')),
};

const said = (of: Language, id: string): string | null => {
  const found = of.find(id);
  return found?.entry.value ? found.bundle.formatPattern(found.entry.value) : null;
};

describe('which language', () => {
  it('is the one chosen by hand, else the first of the device that there is, else English', () => {
    const tags = ['en', 'es', 'pt-BR'];
    expect(nearest(['es', 'en-GB'], tags)).toBe('es');
    expect(nearest([null, 'de-AT', 'es-MX', 'en'], tags)).toBe('es');
    expect(nearest([null, 'pt-br'], tags)).toBe('pt-BR');
    expect(nearest([null, 'de'], tags)).toBe('en');
    expect(nearest([null], tags)).toBe('en');
  });
});

describe('a language', () => {
  it('is a file alone', async () => {
    const one = new Language(shelf);
    await one.speak('xx');
    expect([one.tag, one.name, one.direction, one.decimal, said(one, 'both')]).toEqual(['xx', 'Iks', 'ltr', ',', 'Iks']);
    expect(await one.offers()).toEqual([
      { tag: 'en', name: 'English', draft: null },
      { tag: 'xx', name: 'Iks', draft: 'iks iks' },
    ]);
  });

  it('says in English what it lacks, and loads English only then', async () => {
    let loads = 0;
    const one = new Language({ ...shelf, en: async () => ((loads += 1), (await shelf['en']?.()) ?? '') });
    await one.speak('xx');
    expect([said(one, 'both'), loads]).toEqual(['Iks', 0]);
    expect(said(one, 'only-here')).toBeNull();
    await new Promise((done) => setTimeout(done));
    expect([said(one, 'only-here'), said(one, 'both'), loads]).toEqual(['only in English', 'Iks', 1]);
  });

  it('says a message with what it refers to', async () => {
    const one = new Language({ en: async () => 'whole = a { part }, { $n ->\n    [one] { last }\n   *[other] many\n }\npart = b\nlast = c\n' });
    await one.speak('en');
    const found = one.find('whole');
    expect(found?.bundle.formatPattern(found.entry.value ?? '', { n: 1 })).toBe('a b, c');
  });

  it('that cannot be loaded is English', async () => {
    const one = new Language(shelf);
    await one.speak('yy');
    expect([one.tag, said(one, 'both')]).toEqual(['en', 'English']);
  });

  it('that was asked for last is spoken, though another comes later', async () => {
    let late = (): void => {};
    const one = new Language({ ...shelf, en: () => new Promise((done) => (late = () => done('both = late'))) });
    const first = one.speak('en');
    await one.speak('xx');
    late();
    await first;
    expect([one.tag, said(one, 'both')]).toEqual(['xx', 'Iks']);
  });
});

describe('dates and figures', () => {
  it('follow the language, with a comma or a point typed', async () => {
    expect([figure('36.8'), typedFigure(' 36,8 '), typedFigure('36.8'), typedFigure(' ')]).toEqual(['36.8', 36.8, 36.8, null]);
    expect(say(momentWords('2026-11-05 03:12:40'))).toBe('5 Nov 2026 03:12:40');
    expect([say(dateWords('2026-11-25')), say(dateWords('1993?'))]).toEqual(['25 Nov 2026', '1993?']);
  });
});

describe('a made-up language', () => {
  it('is longer by two fifths and accented, or marked as read from right to left', async () => {
    expect(accented('Baby born')).toBe('Båååbýý böörñ');
    expect(mirrored('Baby 2 born')).toBe('\u202eBaby\u202c 2 \u202eborn\u202c');
    await language.speak('pseudo');
    expect([say({ id: 'part-pulse', args: { value: 96 } }), language.direction, language.tag]).toEqual(['pûûlséé 96', 'ltr', 'en']);
    await language.speak('pseudo-rtl');
    expect([say({ id: 'part-pulse', args: { value: 96 } }), language.direction]).toEqual(['\u202epulse\u202c \u206896\u2069', 'rtl']);
    expect((await language.offers()).map(({ tag }) => tag)).not.toContain('pseudo');
    await language.speak('en');
  });
});
