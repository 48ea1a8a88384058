import { mount } from 'svelte';
import '../theme/tokens.css';
import '../theme/base.css';
import { tick } from '../lib/clock.svelte';
import { speak } from '../lib/language.svelte';
import Design from './Design.svelte';

await speak('en');
tick.start();
const target = document.getElementById('page');
if (target) mount(Design, { target });
