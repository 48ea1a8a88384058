// Starts the development bridge on a fresh data folder, and a browser on its page.
import { spawn } from 'node:child_process';
import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium } from 'playwright-core';

const UI = join(import.meta.dirname, '..');

export async function startBridge(program = join(UI, '../target/debug/secundine-bridge')) {
  const folder = mkdtempSync(join(tmpdir(), 'secundine-look-'));
  const bridge = spawn(program, [join(folder, 'data'), join(folder, 'records'), join(UI, 'dist')]);
  bridge.stderr.on('data', (text) => process.stderr.write(text));
  const address = await new Promise((resolve, reject) => {
    bridge.stdout.once('data', (text) => resolve(String(text).trim()));
    bridge.once('exit', () => reject(new Error('the bridge ended')));
  });
  return { address, folder, stop: () => bridge.kill() };
}

export function startBrowser() {
  return chromium.launch({ executablePath: '/usr/bin/chromium', args: ['--no-sandbox', '--disable-gpu', '--disable-background-networking'] });
}

/** A page that fails on any error of its own. */
export async function openPage(browser, address, size, theme = 'day') {
  const context = await browser.newContext({ viewport: size, hasTouch: true, reducedMotion: 'no-preference' });
  await context.addInitScript((name) => {
    if (!localStorage.getItem('secundine-settings')) localStorage.setItem('secundine-settings', JSON.stringify({ theme: name, sound: false, vibration: false }));
  }, theme);
  const page = await context.newPage();
  page.on('pageerror', (error) => console.error('page error:', error.message));
  page.on('console', (message) => message.type() === 'error' && console.error('console:', message.text()));
  await page.goto(address);
  return page;
}

export const at = (page, name) => page.locator(`[data-test="${name}"]`);
