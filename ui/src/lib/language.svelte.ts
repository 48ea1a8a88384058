import { FluentBundle, FluentResource, type Message as Entry } from '@fluent/bundle';

/** A catalogue for each language, in a chunk of its own: only what is in use is loaded. The file's name is its BCP 47 tag. */
const FILES = import.meta.glob<string>('../../../core/messages/*.ftl', { query: '?raw', import: 'default' });
const ENGLISH = 'en';
/** Begins the names of the languages that are made up for looking at the page; they are never offered. */
const MADE_UP = 'pseudo';

/** Loads the text of each language, by its tag. */
export type Shelf = Record<string, () => Promise<string>>;

const shelf: Shelf = Object.fromEntries(Object.entries(FILES).map(([path, load]) => [/([^/]+)\.ftl$/.exec(path)?.[1] ?? path, load]));

/** A language as it is offered: its name in its own words, and in them that nobody of the trade has read it. */
export interface Offer {
  tag: string;
  name: string;
  draft: string | null;
}

/** The first of these that there is, by its whole tag or by its language alone; English where there is none of them. */
export function nearest(wanted: readonly (string | null)[], tags: readonly string[]): string {
  const known = (tag: string): string | undefined => tags.find((one) => one.toLowerCase() === tag.toLowerCase());
  for (const tag of wanted) {
    const found = tag && (known(tag) ?? known(tag.split('-')[0] ?? ''));
    if (found) return found;
  }
  return ENGLISH;
}

/** A catalogue that can be spoken from; each message is parsed when it is first said. */
class Catalogue {
  readonly bundle: FluentBundle;
  /** Text of the messages that were not said yet, by id. */
  readonly #unread = new Map<string, string>();

  /** Where the language runs from right to left, what fills a message keeps its own order. */
  constructor(tag: string, text: string, transform: (words: string) => string = (words) => words) {
    this.bundle = new FluentBundle(tag, { useIsolating: /^language-direction = rtl$/m.test(text), transform });
    const starts = [...text.matchAll(/^(-?[a-zA-Z][\w-]*) *=/gm)];
    starts.forEach((start, n) => this.#unread.set(start[1] ?? '', text.slice(start.index, starts[n + 1]?.index)));
  }

  get(id: string): Entry | undefined {
    this.#read(id);
    return this.bundle.getMessage(id);
  }

  /** Parses a message, and what it refers to. */
  #read(id: string): void {
    const text = this.#unread.get(id);
    if (text === undefined) return;
    this.#unread.delete(id);
    this.bundle.addResource(new FluentResource(text));
    for (const [, other] of text.matchAll(/\{\s*(-?[a-z][\w-]*)/g)) if (other) this.#read(other);
  }
}

/** The language in which the page speaks. What draws its words is drawn anew when it changes. */
export class Language {
  /** BCP 47 tag of the language in use. */
  tag = $state(ENGLISH);
  readonly #shelf: Shelf;
  #own = $state.raw<Catalogue | null>(null);
  /** English, loaded only once a message is missing. */
  #english = $state.raw<Catalogue | null>(null);
  #fetching = false;
  #turn = 0;

  constructor(from: Shelf) {
    this.#shelf = from;
  }

  /** The decimal sign. */
  get decimal(): string {
    return this.#text('language-decimal') ?? '.';
  }

  get name(): string {
    return this.#text('language-name') ?? this.tag;
  }

  get direction(): 'ltr' | 'rtl' {
    return this.#text('language-direction') === 'rtl' ? 'rtl' : 'ltr';
  }

  /** Speaks the first of these that there is; English where it cannot be loaded. The last call wins. */
  async speak(...wanted: (string | null)[]): Promise<void> {
    const turn = (this.#turn += 1);
    const [first] = wanted;
    const load = first?.startsWith(MADE_UP) ? () => this.#madeUp(first) : () => this.#load(nearest(wanted, Object.keys(this.#shelf)));
    const catalogue = await load().catch(() => this.#load(ENGLISH).catch(() => null));
    if (turn !== this.#turn) return;
    this.#own = catalogue;
    this.tag = catalogue?.bundle.locales[0] ?? ENGLISH;
  }

  /** A message's entry and the catalogue that has it: the language's own, else English's, as soon as that is here. */
  find(id: string): { bundle: FluentBundle; entry: Entry } | null {
    for (const catalogue of [this.#own, this.#english]) {
      const entry = catalogue?.get(id);
      if (catalogue && entry?.value) return { bundle: catalogue.bundle, entry };
    }
    if (this.#own && this.tag !== ENGLISH) void this.#fetchEnglish();
    return null;
  }

  /** Every language that can be loaded, by name. */
  async offers(): Promise<Offer[]> {
    const read = async (tag: string): Promise<Offer> => {
      const other = new Language(this.#shelf);
      await other.speak(tag);
      if (other.tag !== tag) throw new Error(tag);
      const draft = other.#text('language-status') === 'machine-drafted' ? other.#text('language-machine-drafted') : null;
      return { tag, name: other.name, draft };
    };
    const offers = await Promise.allSettled(Object.keys(this.#shelf).map(read));
    return offers.flatMap((one) => (one.status === 'fulfilled' ? [one.value] : [])).sort((a, b) => a.name.localeCompare(b.name));
  }

  async #load(tag: string): Promise<Catalogue> {
    const load = this.#shelf[tag];
    if (!load) throw new Error(tag);
    return new Catalogue(tag, await load());
  }

  /** `pseudo` is English made longer, `pseudo-rtl` runs from right to left. Both count and write figures as English does. */
  async #madeUp(name: string): Promise<Catalogue> {
    const [{ accented, mirrored }, english] = await Promise.all([import('./pseudo'), this.#shelf[ENGLISH]?.()]);
    const rtl = name.endsWith('-rtl');
    const text = (english ?? '').replace(/^(language-name) = .*/m, `$1 = ${name}`).replace(/^(language-direction) = .*/m, `$1 = ${rtl ? 'rtl' : 'ltr'}`);
    return new Catalogue(ENGLISH, text, rtl ? mirrored : accented);
  }

  async #fetchEnglish(): Promise<void> {
    if (this.#fetching) return;
    this.#fetching = true;
    this.#english = await this.#load(ENGLISH).catch(() => null);
  }

  /** What the catalogue says of itself, plain text without values. */
  #text(id: string): string | null {
    const value = this.#own?.get(id)?.value;
    return typeof value === 'string' ? value : null;
  }
}

export const language = new Language(shelf);

/** Speaks the language that was chosen by hand; none, as the device does. A made-up one stands in the page's address. */
export async function speak(chosen: string | null): Promise<void> {
  const address = new URLSearchParams(location.search).get('language');
  await language.speak(address?.startsWith(MADE_UP) ? address : chosen, ...navigator.languages);
  document.documentElement.lang = language.tag;
  document.documentElement.dir = language.direction;
}
