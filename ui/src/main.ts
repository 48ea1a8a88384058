import './theme/tokens.css';
import './theme/base.css';
import { mount } from 'svelte';
import App from './App.svelte';
import { daylight } from './lib/daylight';
import { speak } from './lib/language.svelte';
import { settings } from './lib/settings.svelte';

daylight.show();
// The first thing that is drawn is drawn in words.
await speak(settings.language);
const target = document.getElementById('page');
if (target) mount(App, { target });
