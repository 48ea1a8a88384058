// The language: chosen in the menu, kept, on paper; and a made-up one that runs from right to left.

import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { after, before, test } from "node:test";

import { createPractice, writeFile } from "./birth.mjs";
import { Phone, emptyPhone, launch, picturesIn } from "./browser.mjs";
import { at } from "./core.mjs";

let browser;
before(async () => {
  browser = await launch();
});
after(() => browser.close());

const looker = picturesIn("language");

async function choose(hand, tag) {
  await hand.tap('[data-test="menu"]');
  await hand.tap('[data-test="language"]');
  await hand.tap(`[data-test="language-${tag}"]`);
  await hand.page.locator(`html[lang="${tag}"]`).waitFor();
}

async function closeSheets(hand) {
  for (let open = await at(hand, "sheet-close").count(); open > 0; open -= 1) {
    await hand.tap('[data-test="sheet-close"]', "last");
    await hand.page.waitForTimeout(200);
  }
}

/** The text of a record that is written on the page that is open. */
async function printed(hand) {
  await hand.tap('[data-test="tab-record"]');
  const path = await writeFile(hand, "record");
  return { text: execFileSync("pdftotext", ["-layout", path, "-"], { encoding: "utf8" }), about: execFileSync("qpdf", ["--qdf", "--object-streams=disable", path, "-"], { encoding: "latin1", maxBuffer: 1 << 26 }) };
}

test("Spanish is chosen, stays, and is printed; then English again", { timeout: 60_000 }, async (t) => {
  const { hand } = await emptyPhone(t, browser);
  const look = looker(hand);
  await createPractice(hand);
  assert.equal(await hand.textOf('[data-test="baby-born"]'), "Baby born");
  await choose(hand, "es");
  // In its own words, that nobody of the trade has read it; English has been read.
  assert.match(await hand.textOf('[data-test="language-es"]'), /^Español\n+traducción automática/);
  assert.equal((await hand.textOf('[data-test="language-en"]')).trim(), "English");
  await look("languages");
  await closeSheets(hand);
  assert.equal(await hand.textOf('[data-test="baby-born"]'), "Nació el bebé");
  await hand.page.reload();
  await hand.find('[data-test="baby-born"]');
  assert.equal(await hand.run("return document.documentElement.lang;"), "es");
  await look("births");

  await hand.tap('[data-test="baby-born"]');
  await hand.find('[data-test="clock"]');
  await look("third-stage");

  // A number is typed with either sign, and stands with the language's own.
  await hand.tap('[data-test="more"]');
  await hand.tap('[data-test="enter-mother_observed"]');
  await hand.type('[data-test="temperature"]', "36.8");
  await at(hand, "temperature").blur();
  assert.equal(await at(hand, "temperature").inputValue(), "36,8");
  await hand.type('[data-test="temperature"]', "36,7");
  await hand.tap('[data-test="save"]');
  await at(hand, "save").waitFor({ state: "detached" });

  const { text, about } = await printed(hand);
  assert.match(text, /36,7 °C/);
  assert.match(text, /Alumbramiento y examen de la placenta/i);
  assert.match(text, /traducción automática/);
  assert.doesNotMatch(text, /Written by|Signatures|Not recorded/i);
  assert.match(about, /\/Lang \(es\)/);

  await hand.tap('[data-test="back"]');
  await choose(hand, "en");
  await closeSheets(hand);
  assert.equal(await hand.textOf('[data-test="baby-born"]'), "Baby born");
  assert.deepEqual(hand.problems, []);
});

test("from right to left the page turns round, and clocks do not", { timeout: 60_000 }, async (t) => {
  const { bridge, hand: first } = await emptyPhone(t, browser);
  const [page, token] = bridge.address.split("#");
  await first.page.close();
  const hand = await Phone.open(browser, `${page}?language=pseudo-rtl#${token}`);
  const look = looker(hand);
  await createPractice(hand);
  await hand.tap('[data-test="menu"]');
  await hand.tap('[data-test="language"]');
  await hand.find('[data-test="language-en"]');
  assert.equal(await hand.has('[data-test="language-pseudo-rtl"]'), false, "it is never offered");
  await closeSheets(hand);
  assert.equal(await hand.run("return document.documentElement.dir;"), "rtl");
  await hand.tap('[data-test="baby-born"]');
  await hand.find('[data-test="clock"]');
  await look("right-to-left");
  const back = await at(hand, "back").boundingBox();
  assert.ok(back.x > 180, `the way back is at the right: ${JSON.stringify(back)}`);
  const directions = await hand.run("return [...document.querySelectorAll('bdi[dir=ltr]')].map((one) => getComputedStyle(one).direction);");
  assert.ok(directions.length > 1 && directions.every((one) => one === "ltr"), String(directions));
  const digits = await hand.run("return [...document.querySelectorAll('[data-test=clock] .time .figures span')].map((one) => one.getBoundingClientRect().x);");
  assert.deepEqual(digits, digits.toSorted((a, b) => a - b), "minutes stand left of seconds");
  assert.deepEqual(hand.problems, []);
});
