// The page with the ports of a phone (mobile/plugin/page/ports.js), over a shell that passes the one call to the bridge and only
// listens to everything else: what a phone is told, and when, and that none of it is a name.

import assert from "node:assert/strict";
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { after, before, test } from "node:test";
import { setTimeout as sleep } from "node:timers/promises";

import { createPractice } from "./birth.mjs";
import { emptyPhone, launch, until } from "./browser.mjs";
import { call } from "./core.mjs";
import { camera, photograph } from "./photograph.mjs";

let browser;
before(async () => {
  browser = await launch();
});
after(() => browser.close());

/** In the page, before anything else: what Tauri puts there, and then what the plugin does. */
function shell() {
  const told = { notifications: true, exact_reminders: true, volume: 70, battery: 80, awake: true, vibration: true, metered: false };
  const phone = (window.phone = { asked: [], answers: { tell: told, voices: { available: true }, photograph: { base64: null } } });
  const invoke = async (command, args) => {
    if (command !== "call") {
      const name = command.replace("plugin:phone|", "");
      phone.asked.push([name, structuredClone(args ?? {})]);
      return phone.answers[name] ?? null;
    }
    const token = new URLSearchParams(location.hash.slice(1)).get("token");
    const headers = { "content-type": "application/json", authorization: `Bearer ${token}` };
    const answer = await fetch("/call", { method: "POST", headers, body: JSON.stringify(args.request) });
    const body = await answer.json();
    if (answer.status !== 200) throw body;
    return body;
  };
  window.__TAURI_INTERNALS__ = { invoke, transformCallback: () => 0 };
}
const PORTS = readFileSync(new URL("../../mobile/plugin/page/ports.js", import.meta.url), "utf8");
const script = { content: `(${shell})();${PORTS}` };

/** What was asked of the phone by one name. */
const asked = (hand, name) => hand.page.evaluate((name) => window.phone.asked.filter(([one]) => one === name).map(([, args]) => args), name);

/** Waits until the last that was asked by this name is so; gives it. */
async function lastAsked(hand, name, fits) {
  for (let tries = 0; tries < 150; tries += 1) {
    const last = (await asked(hand, name)).at(-1);
    if (last !== undefined && fits(last)) return last;
    await sleep(100);
  }
  throw new Error(`${name} was not asked so: ${JSON.stringify(await asked(hand, name))}`);
}

const tap = async (hand, name) => {
  await hand.find(`[data-test="${name}"]`);
  await hand.tap(`[data-test="${name}"]`);
};

test("a phone is told the times that come and the clock that runs, and no name", { timeout: 180_000 }, async (t) => {
  const { hand } = await emptyPhone(t, browser, { script });
  await createPractice(hand);
  // There was no practice: what an earlier one left is taken away.
  assert.equal((await asked(hand, "remind"))[0].group, null);
  await tap(hand, "baby-born");
  const clock = await lastAsked(hand, "clock", (last) => last.sinceMs !== null);
  assert.ok(clock.sinceMs >= 0 && clock.sinceMs < 60_000, `${clock.sinceMs}`);
  const { births } = await call(hand, { request: "births", skip: 0, take: 1 });
  const armed = async () => (await call(hand, { request: "birth", birth: births[0].birth })).due.filter((due) => due.armed);
  const reminded = await lastAsked(hand, "remind", (last) => last.group !== null);
  const due = await armed();
  assert.ok(due.length > 0, "the protocol of the practice has times");
  assert.equal(reminded.group, births[0].birth);
  assert.deepEqual(reminded.coming.map(({ level }) => level), due.map(({ level }) => level));
  for (const [n, { inMs }] of reminded.coming.entries()) assert.ok(Math.abs(inMs - due[n].in_ms) < 30_000, `${inMs} ${due[n].in_ms}`);
  assert.deepEqual(Object.keys(reminded.coming[0]).sort(), ["inMs", "level"]);

  // Named, and looked at again: the same is not told twice, and no name is told at all.
  const before = (await asked(hand, "remind")).length;
  const [none, now] = [null, { at: "now", ago_ms: 0 }];
  const data = { name: "Maria Example", born: none, gestation: none, gravida: none, para: none, blood_group: none, allergies: none };
  const named = await call(hand, { request: "record", birth: births[0].birth, fact: { kind: "client_recorded", data }, at: now });
  assert.equal(named.response, "record", JSON.stringify(named));
  await sleep(6_000);
  assert.equal((await asked(hand, "remind")).length, before);
  assert.equal((await asked(hand, "clock")).filter(({ sinceMs }) => sinceMs !== null).length, 1);

  await tap(hand, "mark-cord_clamped");
  await tap(hand, "mark-placenta_born");
  await lastAsked(hand, "clock", (last) => last.sinceMs === null);
  const everything = JSON.stringify(await hand.page.evaluate(() => window.phone.asked.filter(([name]) => name === "remind" || name === "clock")));
  assert.doesNotMatch(everything, /Maria|placenta|baby|third|mother|blood|birth/i);
  assert.deepEqual(hand.problems, []);
});

test("the screen stays on and the keys are the page's while a birth is timed", { timeout: 180_000 }, async (t) => {
  const { hand } = await emptyPhone(t, browser, { script });
  await createPractice(hand);
  assert.deepEqual(await asked(hand, "volume_keys"), []);
  await tap(hand, "baby-born");
  await lastAsked(hand, "keep_awake", (last) => last.on);
  await lastAsked(hand, "volume_keys", (last) => last.on);
  const { births } = await call(hand, { request: "births", skip: 0, take: 1 });
  const moments = async () => (await call(hand, { request: "birth", birth: births[0].birth })).timeline.filter((line) => line.fact.kind === "moment_marked").length;
  // As Kotlin hands it over.
  await hand.run("window.dispatchEvent(new KeyboardEvent('keydown', { key: 'AudioVolumeUp' }))");
  await hand.page.waitForFunction(() => window.phone.asked.some(([name]) => name === "buzz"));
  await until("a key marks the moment", async () => (await moments()) === 1);
  await tap(hand, "tab-timeline");
  await lastAsked(hand, "volume_keys", (last) => !last.on);
  await tap(hand, "back");
  await lastAsked(hand, "keep_awake", (last) => !last.on);
});

test("a photograph that the phone's camera gave is sealed like any other", { timeout: 180_000 }, async (t) => {
  const { hand, folder } = await emptyPhone(t, browser, { script });
  await createPractice(hand);
  for (const name of ["baby-born", "mark-cord_clamped", "mark-placenta_born"]) await tap(hand, name);
  await hand.find('[data-test="mark-membranes_born"]');
  await tap(hand, "tab-exam");
  await tap(hand, "photographs");
  await hand.find('[data-test="photos-none"]');
  // Called off first: nothing is said, nothing is kept.
  await tap(hand, "photo-input");
  await hand.page.waitForFunction(() => window.phone.asked.some(([name]) => name === "photograph"));
  assert.ok(await hand.has('[data-test="photos-none"]'));
  const { buffer } = await photograph(hand, camera(0));
  await hand.page.evaluate((base64) => (window.phone.answers.photograph = { base64 }), buffer.toString("base64"));
  await tap(hand, "photo-input");
  await hand.page.locator('[data-test="photo"] img').first().waitFor();
  const files = readdirSync(join(folder, "practice/files")).map((name) => readFileSync(join(folder, "practice/files", name)));
  assert.equal(files.length, 2);
  for (const bytes of files) assert.ok(bytes.subarray(0, 21).toString() === "age-encryption.org/v1" && !bytes.includes("JFIF"));
  assert.deepEqual(hand.problems, []);
});
