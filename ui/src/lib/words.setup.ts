import { language } from './language.svelte';

// What a test reads is read in English.
await language.speak('en');
