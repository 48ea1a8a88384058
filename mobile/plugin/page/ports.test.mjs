// The ports over a shell that only listens: what is asked of it, and what the page gets.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { test } from 'node:test';
import vm from 'node:vm';

const here = new URL('.', import.meta.url);
const source = readFileSync(new URL('ports.js', here), 'utf8');
const WORDS = { reminder: 'A time has come.', note: 'Soft', caution: 'Plain', limit: 'Strong', clock: 'Clock' };

/** A page with the ports, and what they asked of the shell. */
function page(answers = {}) {
  const asked = [];
  const events = new EventTarget();
  const document = Object.assign(new EventTarget(), { hidden: false, documentElement: { lang: 'es' } });
  const invoke = async (command, args) => {
    const name = command.replace('plugin:phone|', '');
    asked.push([name, structuredClone(args)]);
    const answer = answers[name];
    if (answer instanceof Error) throw answer;
    return (typeof answer === 'function' ? answer(args) : answer) ?? {};
  };
  const window = Object.assign(events, { __TAURI_INTERNALS__: { invoke } });
  vm.runInNewContext(source, { window, document, navigator: { language: 'en' }, atob, Blob, Uint8Array, Promise, Set });
  return { asked, window, document, ports: window.secundine };
}

const settled = () => new Promise((done) => setTimeout(done, 5));
const event = (type, detail) => Object.assign(new Event(type), { detail });
const only = (asked, name) => asked.filter(([one]) => one === name).map(([, args]) => args);

test('every port of the page that a phone does better is there, and no other', () => {
  const declared = readFileSync(new URL('../../../ui/src/lib/ports.ts', here), 'utf8');
  const names = [...declared.slice(0, declared.indexOf('declare global')).matchAll(/^ {2}(\w+): /gm)].map(([, name]) => name);
  const given = Object.keys(page().ports);
  assert.deepEqual(given.filter((name) => !names.includes(name)), []);
  assert.deepEqual(names.filter((name) => !given.includes(name)), ['sounder']);
});

test('every command that is asked is one of the plugin, and every one of those is asked', () => {
  const build = readFileSync(new URL('../build.rs', here), 'utf8');
  const commands = [...build.slice(0, build.indexOf('];')).matchAll(/"(\w+)"/g)].map(([, name]) => name);
  const asked = [...source.matchAll(/(?:ask|quietly|wished)\('(\w+)'/g)].map(([, name]) => name);
  assert.deepEqual([...new Set(asked)].sort(), [...commands].sort());
  const rust = readFileSync(new URL('../src/commands.rs', here), 'utf8');
  assert.deepEqual([...rust.matchAll(/pub\(crate\) async fn (\w+)/g)].map(([, name]) => name).sort(), [...commands].sort());
});

test('the page may ask exactly that, and never the key store', () => {
  const build = readFileSync(new URL('../build.rs', here), 'utf8');
  const commands = [...build.slice(0, build.indexOf('];')).matchAll(/"(\w+)"/g)].map(([, name]) => name);
  const allowed = [...readFileSync(new URL('../permissions/default.toml', here), 'utf8').matchAll(/"allow-([\w-]+)"/g)].map(([, name]) => name.replaceAll('-', '_'));
  assert.deepEqual(allowed.sort(), commands.toSorted());
  const { permissions } = JSON.parse(readFileSync(new URL('../../../src-tauri/capabilities/main.json', here), 'utf8'));
  assert.deepEqual(permissions, ['allow-call', 'phone:default']);
  assert.ok(!commands.some((name) => /secret|key_store/.test(name)));
});

test('the widget and the plugin know the same of the clock', () => {
  const of = (folder) => readFileSync(new URL(`../ios/${folder}/ClockAttributes.swift`, here), 'utf8');
  assert.equal(of('Clock'), of('Sources'));
});

test('each command that Rust passes on is a method in Kotlin and in Swift', () => {
  const rust = readFileSync(new URL('../src/commands.rs', here), 'utf8') + readFileSync(new URL('../src/keys.rs', here), 'utf8');
  const passed = [...rust.matchAll(/\.ask\("(\w+)"/g)].map(([, name]) => name);
  assert.equal(new Set(passed).size, 14);
  const kotlin = readFileSync(new URL('../android/src/main/java/org/secundine/phone/PhonePlugin.kt', here), 'utf8');
  const swift = readFileSync(new URL('../ios/Sources/PhonePlugin.swift', here), 'utf8');
  for (const name of passed) {
    assert.match(kotlin, new RegExp(`@Command\\s+fun ${name}\\(invoke: Invoke\\)`), name);
    assert.match(swift, new RegExp(`@objc (public |open )?func ${name}\\(_ invoke: Invoke\\)`), name);
  }
});

test('the device is asked for leave only before a birth, and the line is known without asking', async () => {
  const { asked, ports, document } = page({ tell: { notifications: true, battery: 80, metered: true } });
  assert.equal(ports.device.metered(), null);
  await settled();
  assert.equal(ports.device.metered(), true);
  assert.deepEqual(JSON.parse(JSON.stringify(await ports.device.tell())), { notifications: true, battery: 80 });
  document.dispatchEvent(event('visibilitychange'));
  await settled();
  assert.deepEqual(only(asked, 'tell').map(({ ask }) => ask), [false, true, false]);
});

test('a shell that fails costs nothing', async () => {
  const broken = new Error('no');
  const { ports } = page({ tell: broken, buzz: broken, voices: broken, clock: broken });
  ports.buzzer.buzz([40]);
  ports.lockScreen.run(0, WORDS);
  assert.equal(ports.speaker.available(), false);
  await settled();
  assert.equal(ports.device.metered(), null);
  await assert.rejects(ports.device.tell());
});

test('the screen and the keys are held while anybody wishes it', async () => {
  const { asked, ports } = page();
  for (const [take, name] of [[ports.device.keepAwake, 'keep_awake'], [ports.volumeKeys.take, 'volume_keys']]) {
    const [one, other] = [take(), take()];
    one();
    one();
    await settled();
    assert.deepEqual(only(asked, name), [{ on: true }], name);
    other();
    await settled();
    assert.deepEqual(only(asked, name), [{ on: true }, { on: false }], name);
  }
});

test('a voice is there once the engine is up, and for its language alone', async () => {
  let up = false;
  const { window, document, ports, asked } = page({ voices: ({ language }) => ({ available: up && language === 'es' }) });
  let told = 0;
  const still = ports.speaker.watch(() => (told += 1));
  assert.equal(ports.speaker.available(), false);
  await settled();
  up = true;
  window.dispatchEvent(event('secundine-speech', { call: 'ready' }));
  await settled();
  assert.deepEqual([ports.speaker.available(), told], [true, 1]);
  document.documentElement.lang = 'fr';
  ports.speaker.available();
  await settled();
  assert.equal(ports.speaker.available(), false);
  document.documentElement.lang = 'es';
  still();
  ports.speaker.say('Hola');
  ports.speaker.stop();
  await settled();
  assert.deepEqual([only(asked, 'speak'), only(asked, 'hush').length, told], [[{ text: 'Hola', language: 'es' }], 1, 1]);
});

test('reminders and clock go on as they are', async () => {
  const { asked, ports } = page();
  const patterns = { note: [90], caution: [140, 460, 140], limit: [650, 450, 650] };
  ports.alarms.arm('00ff-7', [{ inMs: 60_000, level: 'note' }], WORDS, patterns);
  ports.alarms.arm(null, [], WORDS, patterns);
  ports.lockScreen.run(90_000, WORDS);
  ports.lockScreen.stop(WORDS);
  await settled();
  assert.deepEqual(only(asked, 'remind'), [
    { group: '00ff-7', coming: [{ inMs: 60_000, level: 'note' }], words: WORDS, patterns },
    { group: null, coming: [], words: WORDS, patterns },
  ]);
  assert.deepEqual(only(asked, 'clock'), [{ sinceMs: 90_000, words: WORDS }, { sinceMs: null, words: WORDS }]);
});

test('a photograph comes as bytes, one that was called off as none, one that failed as a failure', async () => {
  const taken = await page({ photograph: { base64: 'AQID/w==' } }).ports.camera.photograph();
  assert.deepEqual([...new Uint8Array(await taken.arrayBuffer())], [1, 2, 3, 255]);
  assert.equal(await page({ photograph: { base64: null } }).ports.camera.photograph(), null);
  await assert.rejects(page({ photograph: new Error('no') }).ports.camera.photograph());
});

test('a file is given only where the shell says so', async () => {
  assert.equal(await page({ share: { given: true } }).ports.sharer.share('/a.pdf'), true);
  for (const answer of [{ given: false }, {}]) assert.equal(await page({ share: answer }).ports.sharer.share('/a.pdf'), false);
});
