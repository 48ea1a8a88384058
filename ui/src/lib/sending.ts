import { language } from './language.svelte';
import { ask } from './transport';

/** How often what waits to be sent is tried again while the practice is open (ours). The core keeps to its pauses. */
const TRY_MS = 10 * 60_000;

/** Sends what waits: now, when there is a connection again, and from time to time. Gives the way to end it. */
export function keepSending(): () => void {
  const send = (): void => {
    // What failed is told where it was asked for.
    ask('send_waiting', { birth: null, language: language.tag }).catch(() => undefined);
  };
  send();
  window.addEventListener('online', send);
  const beat = setInterval(send, TRY_MS);
  return () => {
    window.removeEventListener('online', send);
    clearInterval(beat);
  };
}
