import './theme/tokens.css';
import './theme/base.css';
import { mount } from 'svelte';
import App from './App.svelte';
import { daylight } from './lib/daylight';

daylight.show();
const target = document.getElementById('page');
if (target) mount(App, { target });
