import { MediaQuery } from 'svelte/reactivity';

/** A laptop, or a tablet on its side: room for two columns. */
export const wide = new MediaQuery('min-width: 900px');
