// When it goes wrong, and before leaving: the log, its account, the scribe, the way to the hospital, the curve, the list.
import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import test from 'node:test';
import { createPractice, writeFile } from './birth.mjs';
import { at, emptyPhone, launch, picturesIn } from './browser.mjs';

const browser = await launch();
const pictures = picturesIn('emergency');
test.after(() => browser.close());

test('an emergency is marked with one touch each, told in order, and printed', async (t) => {
  const { hand } = await emptyPhone(t, browser);
  const look = pictures(hand);
  const { page } = hand;
  const tap = (name) => hand.tap(`[data-test="${name}"]`);
  await createPractice(hand);
  await tap('baby-born');
  await at(page, 'clock').waitFor();

  await tap('more');
  await tap('care-physiological');
  await tap('more');
  await tap('enter-travel_time_set');
  await hand.type('[data-test="travel"]', '70');
  await tap('save');
  await at(page, 'save').waitFor({ state: 'detached' });
  await page.getByText('≥ 0 min').first().waitFor();
  await look('far-away');

  await tap('emergency');
  await look('log-empty');
  await tap('emergency-response_marked-help_called');
  await page.locator('[data-test="emergency-response_marked-help_called"] .clocks').getByText(/\d\d:\d\d:\d\d/).waitFor();
  await look('log-first');
  await tap('emergency-medicine-oxytocin');
  assert.equal(await at(page, 'medicine-name').inputValue(), 'oxytocin');
  await hand.type('[data-test="medicine-dose"]', '10 IU');
  await tap('save');
  await at(page, 'save').waitFor({ state: 'detached' });
  for (const ml of ['350', '300']) {
    await tap('emergency-blood');
    await tap('loss-jug');
    await hand.type('[data-test="loss-volume"]', ml);
    await tap('save');
    await at(page, 'save').waitFor({ state: 'detached' });
  }
  await tap('scribe');
  await hand.type('[data-test="scribe-name"]', 'Ben Olsen');
  await tap('scribe-set');
  await page.locator('[data-test="scribe"]').getByText('Ben Olsen writes').waitFor();
  await tap('emergency-response_marked-ambulance_called');
  await page.locator('[data-test="emergency-response_marked-ambulance_called"] .clocks').getByText(/\d\d:\d\d:\d\d/).waitFor();
  await look('log-full');
  const told = await at(page, 'account').locator('li').allInnerTexts();
  const order = ['Help called', 'Given: oxytocin', '350 mL', '300 mL', 'Ambulance called'];
  assert.equal(told.length, order.length, told.join(' | '));
  order.forEach((words, place) => assert.ok(told[place].includes(words), `${place}: ${told[place]}`));
  assert.match(await at(page, 'blood-curve').first().innerText(), /650 mL in 2 amounts/);

  // A slip is taken back, and the account no longer tells it.
  await tap('emergency-response_marked-oxygen_started');
  await page.locator('[data-test="emergency-response_marked-oxygen_started"] .clocks').waitFor();
  await hand.tap('[data-test="undo"]', 'last');
  await page.locator('[data-test="emergency-response_marked-oxygen_started"] .clocks').waitFor({ state: 'detached' });
  assert.equal(await at(page, 'account').locator('li').count(), order.length);
  await tap('sheet-close');
  // Whose name the entries bear stays in sight, on every screen.
  await look('scribe-band');
  await tap('band-scribe-end');
  await at(page, 'band-scribe').waitFor({ state: 'detached' });
  await look('stage-after');

  await tap('tab-timeline');
  const ambulance = page.locator('[data-test="line"]', { hasText: 'Ambulance called' });
  assert.match(await ambulance.innerText(), /Ben Olsen/);
  assert.match(await page.locator('[data-test="line"]', { hasText: 'Help called' }).innerText(), /Ida Lindqvist/);

  await tap('tab-stage');
  await tap('mark-placenta_born');
  await tap('more');
  await tap('more-leaving');
  await look('leaving');
  assert.match(await at(page, 'leaving-open').innerText(), /14 of 16 not recorded/);
  await tap('leaving-warning_signs');
  await page.locator('[data-test="leaving-warning_signs"]').getByText('Told which signs').waitFor();
  await tap('leaving-contact');
  await hand.type('[data-test="contact-when"]', 'Visit tomorrow at 10');
  await hand.type('[data-test="contact-call"]', 'Ida, 0123');
  await hand.type('[data-test="contact-time"]', '9:30');
  await tap('save');
  await page.getByText('This is no date and time').waitFor();
  await at(page, 'contact-day').fill('2026-12-01');
  await look('leaving-contact');
  await tap('save');
  await at(page, 'save').waitFor({ state: 'detached' });
  await page.locator('[data-test="leaving-open"]', { hasText: '11 of 16 not recorded' }).waitFor();
  await look('leaving-later');
  await tap('leaving-home_left');

  await tap('tab-record');
  const path = await writeFile(hand, 'record');
  const text = execFileSync('pdftotext', ['-layout', path, '-'], { encoding: 'utf8' });
  const account = text.slice(text.indexOf('Account of the emergency'), text.indexOf('Timeline,'));
  for (const words of [...order, 'Before leaving', '1 Dec 2026 09:30, Visit tomorrow at 10', 'Left the home']) assert.ok(account.includes(words), `${words} in ${account}`);
  assert.deepEqual(hand.problems, []);
});

test('the practice lists its medicines, and one touch writes the usual dose', async (t) => {
  const { hand } = await emptyPhone(t, browser);
  const look = pictures(hand);
  const { page } = hand;
  const tap = (name) => hand.tap(`[data-test="${name}"]`);
  await createPractice(hand);
  await tap('menu');
  await tap('practice');
  await tap('medicines');
  for (const [name, dose] of [['ergometrine', '500 micrograms'], ['arnica', '5 drops']]) {
    await hand.type('[data-test="list-name"]', name);
    await hand.type('[data-test="list-dose"]', dose);
    await hand.type('[data-test="list-route"]', name === 'arnica' ? 'by mouth' : 'IM');
    await tap('list-uterotonic-no');
    await tap('medicines-add');
    await page.locator('[data-test="medicines-list"]').getByText(dose).waitFor();
  }
  await tap('medicines-remove-1');
  await page.locator('[data-test="medicines-list"]').getByText('arnica').waitFor({ state: 'detached' });
  await look('medicines');
  await tap('medicines-undo');
  await page.locator('[data-test="medicines-list"]').getByText('arnica').waitFor();
  await tap('medicines-back');
  await tap('practice-back');
  await tap('baby-born');
  await at(page, 'clock').waitFor();
  await tap('more');
  await tap('enter-medicine_given');
  await tap('medicine-own-0');
  assert.equal(await at(page, 'medicine-dose').inputValue(), '500 micrograms');
  // The caution comes with the known name: blood pressure was not asked for.
  assert.match(await at(page, 'medicine-cautions').innerText(), /blood pressure/i);
  await look('medicine-own');
  await tap('save');
  await at(page, 'save').waitFor({ state: 'detached' });
  await tap('tab-timeline');
  await page.getByText('Given: ergometrine 500 micrograms, IM').first().waitFor();
  assert.deepEqual(hand.problems, []);
});
