import { createSubscriber } from 'svelte/reactivity';
import { language } from './language.svelte';
import { given } from './ports';

/** What reads sentences aloud on this device. */
export interface Speaker {
  /** Whether anything would be heard. */
  available: () => boolean;
  /** Tells each time that this may have changed; gives a way to stop telling. */
  watch: (changed: () => void) => () => void;
  /** Says this after what is being said. */
  say: (text: string) => void;
  /** Falls silent at once and forgets the rest. */
  stop: () => void;
}

/** Reads nothing. */
const silent: Speaker = { available: () => false, watch: () => () => {}, say: () => {}, stop: () => {} };

/**
 * The web's own speech, with voices that lie on this device only: one that lies elsewhere would be sent what is read, and
 * be silent without a network. WebKit knows no others, though on Linux it says of all that they are not the device's.
 */
function web(synthesis: SpeechSynthesis): Speaker {
  const webkit = navigator.vendor.startsWith('Apple');
  const here = (one: SpeechSynthesisVoice): boolean => (one.localService || webkit) && one.lang.toLowerCase().startsWith(language.tag.toLowerCase());
  const voice = (): SpeechSynthesisVoice | undefined => synthesis.getVoices().find(here);
  return {
    available: () => voice() !== undefined,
    watch: (changed) => {
      synthesis.addEventListener('voiceschanged', changed);
      return () => synthesis.removeEventListener('voiceschanged', changed);
    },
    say: (text) => {
      const [by, utterance] = [voice(), new SpeechSynthesisUtterance(text)];
      if (!by) return;
      utterance.voice = by;
      utterance.lang = by.lang;
      synthesis.speak(utterance);
    },
    stop: () => synthesis.cancel(),
  };
}

/** Name of the event of the window that tells of each call, with what was said. */
export const SPOKEN = 'secundine-speech';

/** The one voice of the page. Each call is told on the window too, so that it can be looked at from outside. */
export class Speech {
  readonly #speaker: Speaker;
  readonly #subscribe: () => void;

  constructor(speaker: Speaker) {
    this.#speaker = speaker;
    this.#subscribe = createSubscriber((update) => speaker.watch(update));
  }

  /** Whether anything would be heard; what draws it is drawn anew when the device's voices come. */
  get available(): boolean {
    this.#subscribe();
    return this.#speaker.available();
  }

  /** Says the sentences one after another, after what is being said. */
  say(...sentences: string[]): void {
    for (const text of sentences) {
      this.#tell({ call: 'say', text });
      this.#speaker.say(text);
    }
  }

  stop(): void {
    this.#tell({ call: 'stop' });
    this.#speaker.stop();
  }

  #tell(detail: { call: 'say'; text: string } | { call: 'stop' }): void {
    if (typeof window !== 'undefined') window.dispatchEvent(new CustomEvent(SPOKEN, { detail }));
  }
}

const own = (): Speaker => (typeof window !== 'undefined' && 'speechSynthesis' in window ? web(window.speechSynthesis) : silent);

export const speech = new Speech(given('speaker') ?? own());
