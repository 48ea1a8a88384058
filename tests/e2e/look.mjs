// Walks the page over the real core and takes pictures: node tests/e2e/look.mjs OUT [WIDTHxHEIGHT] [THEME]
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { PASSPHRASE, createPractice } from './birth.mjs';
import { Phone, at, launch, openPage, startBridge } from './browser.mjs';

const out = process.argv[2] ?? 'out/look';
const [width, height] = (process.argv[3] ?? '360x800').split('x').map(Number);
const theme = process.argv[4] ?? 'day';
mkdirSync(out, { recursive: true });

const bridge = await startBridge();
const browser = await launch();
const page = await openPage(browser, bridge.address, { width, height }, theme);
let number = 0;

async function shoot(name, whole = false) {
  number += 1;
  await page.waitForTimeout(200);
  await page.screenshot({ path: join(out, `${theme}-${width}-${String(number).padStart(2, '0')}-${name}.png`), fullPage: whole });
}

async function measure(where) {
  const boxes = await page.locator('[data-primary]').evaluateAll((nodes) => nodes.map((node) => node.getBoundingClientRect().toJSON()));
  for (const [place, box] of boxes.entries()) {
    const gap = place > 0 ? box.top - boxes[place - 1].bottom : Infinity;
    const fits = box.height >= 128 && gap >= 24 && box.left >= 16 && box.right <= width - 16;
    if (!fits) console.error(`${where}: mark ${place} is ${box.width}x${box.height} with a gap of ${gap}`);
  }
  const wide = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
  if (wide > 0) console.error(`${where}: ${wide} px too wide`);
}

async function stage(name) {
  await shoot(name);
  await measure(name);
}

async function mark(kind) {
  await at(page, `mark-${kind}`).click();
  await page.waitForTimeout(1600);
}

try {
  await createPractice(new Phone(page), (name) => shoot(name, true));
  await stage('list-empty');
  await at(page, 'menu').click();
  await shoot('menu', true);
  await at(page, 'sheet-close').click();
  await at(page, 'baby-born').click();
  await at(page, 'clock').waitFor();
  await stage('born');
  await page.waitForTimeout(1500);
  await mark('cord_pulsation_stopped');
  await at(page, 'more').click();
  await shoot('more', true);
  await at(page, 'care-physiological').click();
  await page.waitForTimeout(1500);
  await at(page, 'mark-cord_clamped').click();
  await page.waitForTimeout(250);
  await stage('clamped-just-now');
  await page.waitForTimeout(1400);
  await stage('clamped');
  await at(page, 'enter-blood').click();
  await at(page, 'loss-weighed').click();
  await at(page, 'loss-gross').fill('690');
  await at(page, 'loss-dry').fill('90');
  await at(page, 'loss-item').fill('pad');
  await shoot('blood', true);
  await at(page, 'save').click();
  await page.waitForTimeout(400);
  await page.waitForTimeout(10_200);
  await stage('blood-limit');
  await shoot('blood-limit-whole', true);
  await at(page, 'more').click();
  await at(page, 'enter-mother_observed').click();
  await at(page, 'fundus-firm').click();
  await at(page, 'pulse').fill('96');
  await at(page, 'systolic').fill('60');
  await at(page, 'diastolic').fill('90');
  await at(page, 'when-typed').click();
  await shoot('observation', true);
  await at(page, 'save').click();
  await at(page, 'sheet-error').waitFor();
  await shoot('observation-error');
  await at(page, 'systolic').fill('100');
  await at(page, 'diastolic').fill('60');
  await at(page, 'when-now').click();
  await at(page, 'save').click();
  await at(page, 'sheet-error').waitFor({ state: 'detached' });
  await at(page, 'more').click();
  await at(page, 'enter-apgar_scored').click();
  await shoot('apgar');
  await at(page, 'sheet-close').click();
  await mark('placenta_born');
  await shoot('placenta');
  await at(page, 'tab-exam').click();
  await shoot('exam-several');
  for (const touch of ['exam-all', 'option-shiny', 'option-none', 'option-to-edge', 'option-velamentous']) {
    await at(page, touch).click();
    await page.waitForTimeout(400);
  }
  await shoot('exam-measure', true);
  for (const touch of ['quick-30', 'option-ragged']) {
    await at(page, touch).click();
    await page.waitForTimeout(400);
  }
  await at(page, 'exam-list').click();
  await shoot('exam-list', true);
  await at(page, 'exam-jump-amnion').click();
  await at(page, 'option-whole').click();
  await page.waitForTimeout(400);
  await at(page, 'tab-timeline').click();
  await shoot('timeline', true);
  await page.locator('[data-test="line"][data-kind="cord_clamped"] button').click();
  await shoot('line', true);
  await at(page, 'correct').click();
  await at(page, 'reason').fill('Looked at the clock on the wall');
  await at(page, 'when-typed').click();
  await at(page, 'save').click();
  await page.waitForTimeout(500);
  await shoot('timeline-corrected', true);
  await at(page, 'tab-record').click();
  await at(page, 'write-record').click();
  await at(page, 'record-path').waitFor();
  await at(page, 'sign').click();
  await page.waitForTimeout(500);
  await shoot('record', true);
  await at(page, 'back').click();
  await page.waitForTimeout(300);
  await stage('list');
  await at(page, 'menu').click();
  await at(page, 'practice').click();
  await page.waitForTimeout(300);
  await page.locator('[data-test="protocol-text-nice-rcog"] summary').click();
  await shoot('practice', true);
  await at(page, 'keys').click();
  await at(page, 'keys-ways').waitFor();
  await shoot('keys', true);
  await at(page, 'keys-back').click();
  await at(page, 'backups').click();
  await at(page, 'backup-make').click();
  await at(page, 'backup-made').waitFor();
  await shoot('backups', true);
  await at(page, 'backups-back').click();
  await at(page, 'practice-back').click();
  await at(page, 'menu').click();
  await at(page, 'rehearse').click();
  await shoot('rehearse');
  await at(page, 'rehearse-watch').click();
  await at(page, 'speed-60').click();
  await at(page, 'rehearse-start').click();
  await page.waitForTimeout(9000);
  await stage('rehearsal');
  await page.waitForTimeout(20_000);
  await shoot('rehearsal-later', true);
  await at(page, 'back').click();
  await shoot('rehearsal-list');
  await at(page, 'menu').click();
  const hold = await at(page, 'end-rehearsal').boundingBox();
  await page.mouse.move(hold.x + 60, hold.y + 40);
  await page.mouse.down();
  await page.waitForTimeout(1300);
  await page.mouse.up();
  await at(page, 'baby-born').waitFor();
  await at(page, 'menu').click();
  await at(page, 'lock').click();
  await at(page, 'unlock').waitFor();
  await at(page, 'passphrase').fill('wrong');
  await at(page, 'unlock').click();
  await at(page, 'unlock-error').waitFor({ timeout: 60_000 });
  await shoot('unlock-error');
  await at(page, 'passphrase').fill(PASSPHRASE);
  await at(page, 'unlock').click();
  await at(page, 'births').waitFor({ timeout: 60_000 });
  console.log('walked to the end');
} catch (error) {
  await shoot('STOPPED');
  throw error;
} finally {
  await browser.close();
  await bridge.stop();
}
