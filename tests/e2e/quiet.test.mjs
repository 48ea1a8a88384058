// What the device tells to eye, hand and ear, and how little: reminders, spoken times, touches that came again, the look
// before a birth. Sound, vibration, speech and device are ports that a test puts its own in place of.
import assert from 'node:assert/strict';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import test from 'node:test';
import { setTimeout as sleep } from 'node:timers/promises';
import { PASSPHRASE, createPractice } from './birth.mjs';
import { Phone, at, launch, picturesIn, startBridge, until } from './browser.mjs';

const folder = mkdtempSync(join(tmpdir(), 'secundine-'));
const bridge = await startBridge(folder);
const token = new URL(bridge.address).hash.slice('#token='.length);
const browser = await launch();
const pictures = picturesIn('quiet');
test.after(async () => {
  await browser.close();
  await bridge.stop();
  rmSync(folder, { recursive: true, force: true });
});
test.before(async () => {
  const hand = await Phone.open(browser, bridge.address);
  await createPractice(hand);
  await hand.page.context().close();
});

/** Asks the core itself. */
function call(hand, request) {
  return hand.page.evaluate(
    async ([body, bearer]) => (await fetch('/call', { method: 'POST', headers: { authorization: `Bearer ${bearer}` }, body: JSON.stringify(body) })).json(),
    [request, token],
  );
}

async function timeline(hand) {
  const { births } = await call(hand, { request: 'births', skip: 0, take: 1 });
  return (await call(hand, { request: 'birth', birth: births[0].birth })).timeline;
}

/** A phone with a script of its own in the page, on the one device of these tests: founded once, since that takes its time. */
async function phone(t, options = {}) {
  const hand = await Phone.open(browser, bridge.address, { width: 360, height: 740, ...options });
  t.after(async () => {
    await hand.page.unrouteAll({ behavior: 'ignoreErrors' });
    await hand.page.context().close();
  });
  await hand.find('[data-test="baby-born"]');
  return hand;
}

/** Begins a birth with one touch; the buttons then keep their places for a moment. */
async function begin(hand) {
  await hand.tap('[data-test="baby-born"]');
  await hand.find('[data-test="mark-cord_clamped"]');
  await sleep(1_500);
}

/**
 * Moves the page's clock. The core's time is the machine's: what it tells of the birth is moved on by as much, and is asked
 * for anew only where something was written.
 */
async function moving(hand) {
  const time = { moved: 0, view: null };
  // From here on it moves only as the test says, however slow the machine is.
  await hand.page.clock.pauseAt(Date.now() + 1_000);
  await hand.page.route('**/call', async (route) => {
    if (route.request().postDataJSON().request !== 'birth') {
      if (route.request().postDataJSON().request === 'record') time.view = null;
      return route.continue();
    }
    time.view ??= await (await route.fetch()).json();
    const view = structuredClone(time.view);
    if (view.third_stage) view.third_stage.elapsed_ms += time.moved;
    for (const due of view.due) due.in_ms -= time.moved;
    return route.fulfill({ json: view });
  });
  time.pass = async (step) => {
    time.moved += step;
    const asked = hand.page.waitForResponse((response) => response.url().endsWith('/call') && response.request().postDataJSON().request === 'birth');
    await hand.page.clock.runFor(step);
    await asked;
  };
  return time;
}

/** A finger: down, so many ms, up. The moment of the touch is the page's own. */
async function finger(hand, selector, ms, times = 1, apart = 0) {
  const box = await hand.page.locator(selector).first().boundingBox();
  const cdp = await hand.page.context().newCDPSession(hand.page);
  const touchPoints = [{ x: box.x + box.width / 2, y: box.y + box.height / 2 }];
  for (let n = 0; n < times; n += 1) {
    if (n > 0) await sleep(apart);
    await cdp.send('Input.dispatchTouchEvent', { type: 'touchStart', touchPoints });
    await sleep(ms);
    await cdp.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] });
  }
  await cdp.detach();
}

// The web's own sound and vibration, watched from outside, and the first frame that shows the touch.
const ANSWERS = `
  window.answers = [];
  const note = (what) => window.answers.push([what, performance.now()]);
  window.addEventListener('pointerdown', (event) => {
    window.answers.push(['down', event.timeStamp]);
    requestAnimationFrame(() => document.querySelector('.down') && note('sight'));
  });
  navigator.vibrate = () => { note('vibration'); return true; };
  const start = OscillatorNode.prototype.start;
  OscillatorNode.prototype.start = function (...args) { note('sound'); return start.apply(this, args); };
`;

test('a mark answers to eye, hand and ear within 100 ms, and a touch that comes again is kept beside it', { timeout: 60_000 }, async (t) => {
  const hand = await phone(t, { script: ANSWERS });
  const look = pictures(hand);
  await begin(hand);
  const WAYS = ['sight', 'vibration', 'sound'];
  // A quick tap, and a finger that rests; taken back each time, so that the same button makes the next mark.
  for (const held of [10, 400]) {
    const took = { sight: [], vibration: [], sound: [] };
    for (let n = 0; n < 3; n += 1) {
      await hand.page.evaluate('window.answers.length = 0');
      await finger(hand, '[data-test="mark-cord_pulsation_stopped"]', held);
      await hand.page.waitForFunction(() => window.answers.some(([what]) => what === 'sound'));
      const answers = await hand.page.evaluate('window.answers');
      const [, down] = answers.find(([what]) => what === 'down');
      for (const way of WAYS) took[way].push(Math.round((answers.find(([what]) => what === way)?.[1] ?? Infinity) - down));
      assert.equal(answers.filter(([what]) => what === 'vibration').length, 1, 'told once');
      await sleep(900);
      await hand.tap('[data-test="undo"]');
      await hand.page.locator('[data-test="undo"]').waitFor({ state: 'detached' });
      await sleep(1_300);
    }
    console.log(`finger down for ${held} ms, ms to each answer: ${JSON.stringify(took)}`);
    // The middle one of three: a machine that builds beside it may hold one up.
    for (const way of WAYS) assert.ok(took[way].toSorted((a, b) => a - b)[1] <= 100, `${way} after ${took[way].join(', ')} ms`);
  }

  await hand.tap('[data-test="mark-cord_pulsation_stopped"]');
  await sleep(1_800);
  await finger(hand, '[data-test="mark-cord_clamped"]', 20, 2, 30);
  await sleep(800);
  const lines = await timeline(hand);
  const born = lines.filter((line) => line.fact.kind === 'cord_clamped');
  assert.equal(born.length, 1, 'two touches 50 ms apart are one mark');
  assert.equal(born[0].again.length, 1, 'with one repeat beside it');
  assert.equal(lines.filter((line) => line.fact.kind === 'touched_again').length, 0, 'which is no line of its own');
  await hand.tap('[data-test="tab-timeline"]');
  assert.match(await at(hand.page, 'again').innerText(), /touched again (at once|0\.\d+ s later)/);
  await look('again');
});

test('a volume key marks a moment, which gets its name later', { timeout: 60_000 }, async (t) => {
  const hand = await phone(t, {});
  const look = pictures(hand);
  const press = async (key) => hand.page.keyboard.press(key);
  await press('PageUp');
  await begin(hand);
  await press('PageUp');
  await hand.find('[data-test="undo"]');
  await look('moment');
  await sleep(1_200);
  const moments = async () => (await timeline(hand)).filter((line) => line.unnamed);
  const [moment] = await moments();
  assert.ok(moment, 'marked');
  assert.equal((await moments()).length, 1, 'one, and none in the list of births');
  await hand.tap('[data-test="tab-exam"]');
  await press('PageDown');
  await hand.tap('[data-test="tab-timeline"]');
  await hand.find('[data-test="unnamed"]');
  await look('unnamed');
  await hand.tap('[data-kind="moment_marked"] button');
  await look('what-was-it');
  await hand.tap('[data-test="was-cord_clamped"]');
  await hand.page.locator('[data-test="unnamed"]').waitFor({ state: 'detached' });
  const named = (await timeline(hand)).find((line) => line.entry === moment.entry);
  assert.deepEqual([named.fact.kind, named.clock, named.earlier.length], ['cord_clamped', moment.clock, 1], 'the time stays, and so does what stood there');
  assert.equal((await moments()).length, 0, 'a key on another tab marks nothing');
  await hand.tap('[data-test="tab-stage"]');
  await hand.tap('[data-test="more"]');
  await hand.tap('[data-test="menu"]');
  await hand.tap('[data-test="device"]');
  await hand.tap('[data-test="volume-marks-off"]');
  await hand.tap('[data-test="sheet-close"]', "last");
  await press('PageUp');
  await sleep(500);
  assert.equal((await moments()).length, 0, 'switched off');
});

// What is heard, felt and said, with the time of the page's own clock.
const EARS = `
  window.heard = [];
  const told = (what, more) => window.heard.push({ what, more, at: performance.now() });
  window.secundine = {
    sounder: { play: (tones) => told('sound', tones) },
    buzzer: { buzz: (pattern) => told('buzz', pattern) },
    speaker: { available: () => true, watch: () => () => {}, say: (text) => told('say', text), stop: () => {} },
  };
  if (!localStorage.getItem('secundine-settings')) localStorage.setItem('secundine-settings', JSON.stringify({ theme: 'day', restAfter: 30, spokenEvery: 10, readAloud: true }));
  window.changes = [];
  document.addEventListener('DOMContentLoaded', () => new MutationObserver((all) => {
    for (const { target } of all) {
      const live = (target.nodeType === 1 ? target : target.parentElement)?.closest('[aria-live=polite], [role=alert]');
      if (live?.dataset.test === 'spoken' || live?.dataset.test === 'alert') window.changes.push([live.dataset.test, live.textContent, performance.now()]);
    }
  }).observe(document.body, { subtree: true, childList: true, characterData: true }));
`;

test('half an hour: the clock is told once a minute, each notice once, and no more than six sounds', { timeout: 120_000 }, async (t) => {
  const hand = await phone(t, { script: EARS, clock: true });
  const look = pictures(hand);
  const { page } = hand;
  await begin(hand);
  await page.evaluate('window.changes.length = 0');
  const { births } = await call(hand, { request: 'births', skip: 0, take: 1 });
  const time = await moving(hand);
  const STEP = 30_000;
  const notices = [7, 13].map((minute) => minute * 60_000);
  while (time.moved < 30 * 60_000) {
    if (notices.includes(time.moved)) {
      const fact = { kind: 'blood_loss', data: { method: 'jug', volume: time.moved === notices[0] ? 550 : 600 } };
      await call(hand, { request: 'record', birth: births[0].birth, fact, at: { at: 'now', ago_ms: 0 } });
    }
    await time.pass(STEP);
    const { moved } = time;
    if (moved === 90_000) await look('reminder-calls');
    if (moved % 600_000 === 300_000) await page.mouse.move(5, 5 + moved / 100_000);
    // While the examination is read aloud nothing else is said.
    if (moved === 19 * 60_000) await page.evaluate(() => document.querySelector('[data-test="tab-exam"]').click());
    if (moved === 21 * 60_000) await page.evaluate(() => document.querySelector('[data-test="tab-stage"]').click());
  }
  const [changes, heard] = [await page.evaluate('window.changes'), await page.evaluate('window.heard')];
  const clock = changes.filter(([where]) => where === 'spoken');
  const alerts = changes.filter(([where]) => where === 'alert');
  console.log(`live regions over 30 min: ${changes.length} changes, ${clock.length} of the clock, ${alerts.length} notices`);
  assert.ok(clock.length >= 29 && clock.length <= 31, `the clock: ${clock.map(([, words]) => words).join(' | ')}`);
  assert.equal(alerts.length, notices.length, alerts.map(([, words]) => words).join(' | '));
  changes.sort((a, b) => a[2] - b[2]).forEach(([, words, when], n) => assert.ok(n === 0 || when - changes[n - 1][2] >= 9_900, `${words} comes ${when - changes[n - 1]?.[2]} ms after another`));
  assert.equal(await page.locator('[role=timer]:not([aria-live=off])').count(), 0);

  const said = heard.filter(({ what, more }) => what === 'say' && /since the birth/.test(more)).map(({ more }) => more);
  assert.deepEqual(said, ['10 minutes since the birth', '30 minutes since the birth'], 'not while it was read aloud');
  // A mark's sound is one tone of 70 ms; a reminder's is longer.
  const reminders = heard.filter(({ what, more }) => what === 'sound' && more.some(({ seconds }) => seconds > 0.4));
  console.log(`sounds of reminders over 30 min: ${reminders.length}`);
  assert.ok(reminders.length >= 2 && reminders.length <= 6, `${reminders.length} sounds`);
  const buzzes = heard.filter(({ what }) => what === 'buzz').map(({ more }) => more.join());
  assert.ok(buzzes.includes('90'), `a note is felt as a note: ${buzzes.join(' | ')}`);
  assert.deepEqual(hand.problems, []);
});

test('a reminder that is touched sounds no second time', { timeout: 60_000 }, async (t) => {
  const hand = await phone(t, { script: EARS, clock: true });
  const { page } = hand;
  const sounds = () => page.evaluate(`window.heard.filter(({ what, more }) => what === 'sound' && more.some(({ seconds }) => seconds > 0.4)).length`);
  await begin(hand);
  const time = await moving(hand);
  const pass = async (ms) => {
    for (const until = time.moved + ms; time.moved < until; ) await time.pass(10_000);
  };
  await pass(70_000);
  const due = page.locator('.place .notice');
  await due.waitFor();
  assert.match(await due.getAttribute('class'), /calls/);
  assert.equal(await sounds(), 1);
  // Only a frame comes and goes, once a second at most, on a small part of the screen; where nothing may move, it stays.
  const frame = (level) =>
    due.evaluate((node, name) => {
      node.classList.remove('note', 'caution', 'limit');
      node.classList.add(name);
      const { animationName, animationDuration, borderTopWidth } = getComputedStyle(node, '::after');
      const box = node.getBoundingClientRect();
      return { moves: animationName !== 'none', seconds: parseFloat(animationDuration), border: borderTopWidth, part: (box.width * box.height) / (innerWidth * innerHeight) };
    }, level);
  for (const [level, seconds] of [['limit', 1], ['caution', 2]]) {
    const { moves, seconds: told, part } = await frame(level);
    assert.ok(moves && told === seconds && part <= 0.25, `${level}: every ${told} s, ${part} of the screen`);
  }
  await page.emulateMedia({ reducedMotion: 'reduce' });
  assert.deepEqual({ ...(await frame('limit')), part: 0 }, { moves: false, seconds: 0, border: '6px', part: 0 });
  await frame('note');
  await due.locator('button').tap();
  await page.waitForFunction(() => !document.querySelector('.place .notice.calls'));
  await pass(120_000);
  assert.equal(await sounds(), 1, 'acknowledged');
  assert.ok(await due.isVisible(), 'and still on the screen');
});

test('a reminder sounds its second time while it is locked too, and says no word of what it is', { timeout: 60_000 }, async (t) => {
  // The next test finds the device open again.
  let hand = null;
  t.after(() => call(hand, { request: 'unlock', passphrase: PASSPHRASE }));
  hand = await phone(t, { script: EARS, clock: true });
  const { page } = hand;
  const sounds = () => page.evaluate(`window.heard.filter(({ what, more }) => what === 'sound' && more.some(({ seconds }) => seconds > 0.4)).length`);
  await begin(hand);
  const time = await moving(hand);
  while (time.moved < 70_000) await time.pass(10_000);
  assert.equal(await sounds(), 1);
  await hand.tap('[data-test="back"]');
  await hand.tap('[data-test="menu"]');
  await hand.tap('[data-test="lock"]');
  const reminder = at(page, 'locked-reminder');
  await reminder.waitFor();
  assert.doesNotMatch(await reminder.innerText(), /Apgar|mother|baby/i);
  await page.clock.runFor(65_000);
  assert.equal(await sounds(), 2, 'once more after a minute');
  // The next one was set before the lock, and comes after it.
  await page.clock.runFor(5 * 60_000);
  const after = await sounds();
  assert.ok(after > 2 && after <= 6, `${after} sounds`);
  await reminder.locator('button').tap();
  await page.clock.runFor(10 * 60_000);
  assert.ok((await sounds()) <= 6);
  assert.deepEqual(hand.problems, []);
});

test('before a birth: what is in place and what is not, in words; and the choices of this device', { timeout: 60_000 }, async (t) => {
  const hand = await phone(t, {
    script: `${EARS} window.secundine.device = {
      tell: async () => ({ notifications: true, exact_reminders: false, volume: 20, battery: 64, awake: true, vibration: null }),
      keepAwake: () => () => {},
      watchLight: (told) => { window.lux = told; return () => {}; },
    };`,
  });
  const look = pictures(hand);
  const { page } = hand;
  await hand.tap('[data-test="before-birth"]');
  await hand.find('[data-test="before-protocol"]');
  const standing = await page.locator('[data-test="before"] li').evaluateAll((all) => Object.fromEntries(all.map((one) => [one.dataset.test.slice('before-'.length), one.dataset.standing])));
  assert.deepEqual(standing, {
    notifications: 'in_place',
    'exact-reminders': 'not_in_place',
    volume: 'not_in_place',
    vibration: 'cannot_tell',
    battery: 'in_place',
    space: standing.space,
    clock: 'in_place',
    awake: 'in_place',
    key: 'not_in_place',
    backup: 'not_in_place',
    protocol: 'in_place',
  });
  const words = await at(page, 'before').innerText();
  assert.doesNotMatch(words, /\b(safe|ready|all (good|fine|set)|OK)\b/i);
  assert.match(words, /20 %/);
  await look('before');
  await page.evaluate('window.heard.length = 0');
  await hand.tap('[data-test="before-play"]');
  await page.waitForFunction(() => window.heard.filter(({ what }) => what === 'sound').length === 3, null, { timeout: 12_000 });
  const played = await page.evaluate('window.heard');
  assert.equal(new Set(played.filter(({ what }) => what === 'sound').map(({ more }) => JSON.stringify(more))).size, 3, 'three sounds');
  assert.equal(new Set(played.filter(({ what }) => what === 'buzz').map(({ more }) => more.join())).size, 3, 'three vibrations');
  await look('before-playing');
  await hand.tap('[data-test="sheet-close"]');

  const theme = () => page.evaluate('document.documentElement.dataset.theme');
  await hand.tap('[data-test="menu"]');
  await hand.tap('[data-test="device"]');
  await hand.tap('[data-test="theme-red"] >> nth=-1');
  assert.equal(await theme(), 'red');
  await look('device-red');
  await hand.tap('[data-test="theme-auto"] >> nth=-1');
  await hand.tap('[data-test="hand-left"]');
  await until('the left hand', () => page.evaluate('document.documentElement.dataset.hand === "left"'));
  // It gets dark while a finger rests on the glass: the theme waits until it is gone.
  const hour = new Date().getHours();
  const byClock = hour >= 20 || hour < 7 ? 'night' : 'day';
  assert.equal(await theme(), byClock);
  const cdp = await page.context().newCDPSession(page);
  await cdp.send('Input.dispatchTouchEvent', { type: 'touchStart', touchPoints: [{ x: 180, y: 20 }] });
  await page.evaluate('window.lux(2)');
  await sleep(200);
  assert.equal(await theme(), byClock, 'not under a finger');
  await cdp.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] });
  await page.waitForFunction(() => document.documentElement.dataset.theme === 'night');
  assert.deepEqual(hand.problems, []);
});
