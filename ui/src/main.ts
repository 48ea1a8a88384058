import './theme/tokens.css';
import './theme/base.css';
import { mount } from 'svelte';
import App from './App.svelte';
import { settings } from './lib/settings.svelte';

settings.apply();
const target = document.getElementById('page');
if (target) mount(App, { target });
