// The language: chosen in the menu, kept, on paper; and a made-up one that runs from right to left.

import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { after, before, test } from "node:test";

import { createPractice } from "./birth.mjs";
import { emptyPhone, launch, picturesIn } from "./browser.mjs";
import { at } from "./core.mjs";

let browser;
before(async () => {
  browser = await launch();
});
after(() => browser.close());

const looker = picturesIn("language");
const html = (hand) => hand.run("const { lang, dir } = document.documentElement; return { lang, dir };");

async function choose(hand, tag) {
  await hand.tap('[data-test="menu"]');
  await hand.tap('[data-test="language"]');
  await hand.tap(`[data-test="language-${tag}"]`);
  await hand.page.locator(`html[lang="${tag}"]`).waitFor();
}

async function close(hand) {
  for (let open = 2; open > 0; open -= 1) await hand.page.locator('[data-test="sheet-close"]').last().tap();
}

test("Spanish is chosen, stays, and is printed", { timeout: 60_000 }, async (t) => {
  const { hand } = await emptyPhone(t, browser);
  const look = looker(hand);
  await createPractice(hand);
  assert.equal(await hand.textOf('[data-test="baby-born"]'), "Baby born");
  await choose(hand, "es");
  await look("languages");
  await close(hand);
  const born = await hand.textOf('[data-test="baby-born"]');
  assert.notEqual(born, "Baby born");
  await hand.page.reload();
  await hand.tap('[data-test="menu"]');
  await hand.tap('[data-test="lock"]');
  await hand.page.locator('[data-test="unlock"]').waitFor();
  assert.deepEqual(await html(hand), { lang: "es", dir: "ltr" });
});
