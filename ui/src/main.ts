import './theme/tokens.css';
import './theme/base.css';
import { mount } from 'svelte';
import App from './App.svelte';
import { app } from './lib/app.svelte';
import { daylight } from './lib/daylight';
import { speak } from './lib/language.svelte';
import { settings } from './lib/settings.svelte';

daylight.show();
// The first thing that is drawn is how things stand, in words; until then the mark stands.
await Promise.all([speak(settings.language), app.look()]);
const target = document.getElementById('page');
target?.replaceChildren();
if (target) mount(App, { target });
