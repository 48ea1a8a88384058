// What the program says of itself: before a practice is founded, and under About.

import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { after, before, test } from "node:test";

import { createPractice } from "./birth.mjs";
import { emptyPhone, launch, picturesIn } from "./browser.mjs";
import { at } from "./core.mjs";

const looker = picturesIn("safety");
let browser;
before(async () => (browser = await launch()));
after(() => browser.close());

/** A message of one line, as the catalogue has it. */
function said(tag, id) {
  const line = readFileSync(`core/messages/${tag}.ftl`, "utf8").split("\n").find((one) => one.startsWith(`${id} = `));
  assert.ok(line, `${id} in ${tag}.ftl`);
  return line.slice(id.length + 3);
}

const NOT = ["ui-what-monitor", "ui-what-judgement", "ui-what-cleared", "ui-what-paper"];

async function tells(hand, tag) {
  await hand.find('[data-test="what-paper"]');
  const text = await hand.text();
  for (const id of NOT) assert.ok(text.includes(said(tag, id)), `${tag}: ${said(tag, id)} in ${text}`);
}

async function speak(hand, tag) {
  await hand.tap('[data-test="language"]');
  await hand.tap(`[data-test="language-${tag}"]`);
  await hand.tap('[data-test="sheet-close"]');
}

test("what it is not, and paper at hand, stand before a practice is founded and under About, in each language", { timeout: 90_000 }, async (t) => {
  const { hand } = await emptyPhone(t, browser);
  const look = looker(hand);
  for (const tag of ["en", "es", "fr", "en"]) {
    if (tag !== "en" || (await hand.run("return document.documentElement.lang")) !== "en") await speak(hand, tag);
    await tells(hand, tag);
    await look(`first-${tag}`);
  }
  await createPractice(hand);
  await hand.tap('[data-test="menu"]');
  await hand.tap('[data-test="about"]');
  await tells(hand, "en");
  assert.match(await hand.textOf('[data-test="about-version"]'), /\d+\.\d+\.\d+/);
  await hand.page.locator('[data-test="about-protocol"]', { hasText: "NICE NG235" }).waitFor();
  await look("about");

  await hand.tap('[data-test="notices"]');
  await hand.page.locator('[data-test="notice"]', { hasText: "Atkinson Hyperlegible" }).locator("button").tap();
  await hand.page.locator('[data-test="notice"] pre', { hasText: "SIL OPEN FONT LICENSE" }).waitFor();
  for (const part of ["sqlcipher-src", "LOINC", "svelte", "tauri"]) assert.ok((await hand.text()).includes(part), part);
  await look("notices");
  assert.deepEqual(hand.problems, []);
});

test("a practice sets its own term for records, and a slip is answered", { timeout: 60_000 }, async (t) => {
  const { hand } = await emptyPhone(t, browser);
  await createPractice(hand);
  await hand.tap('[data-test="menu"]');
  await hand.tap('[data-test="practice"]');
  for (const [typed, error] of [["ten", true], ["900", true], ["25", false]]) {
    await hand.type('[data-test="term-years"]', typed);
    await hand.tap('[data-test="term-save"]');
    await hand.find(`[data-test="${error ? "term-error" : "term-saved"}"]`);
  }
  await looker(hand)("term");
  await hand.tap('[data-test="practice-back"]');
  await hand.tap('[data-test="menu"]');
  await hand.tap('[data-test="practice"]');
  await hand.page.waitForFunction(() => document.querySelector('[data-test="term-years"]')?.value === "25");
  assert.equal(await at(hand, "term-years").inputValue(), "25");
  assert.deepEqual(hand.problems, []);
});
