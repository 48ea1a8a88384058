// Every screen in every look: nothing hangs over, nothing is cut, marks keep their size and place, axe finds nothing, and the
// dim red is dim.
// SECUNDINE_SCREENS=all tries each look on each screen, which takes long; the usual selection has three on each screen, and
// every pair of size with theme, text and direction over any two dozen of them. SECUNDINE_LANGUAGE walks in another language of the page.

import assert from "node:assert/strict";
import { after, before, describe, test } from "node:test";

import { axeFinds } from "./axe.mjs";
import { ALL, USUAL, covering, dress, faults, named } from "./fit.mjs";
import { DIM, WHITE, brightness } from "./light.mjs";
import { STOPS, WALKS, launchForWalks, walk } from "./screens.mjs";

const every = process.env.SECUNDINE_SCREENS === "all";
const language = process.env.SECUNDINE_LANGUAGE;
const THEMES = ["day", "night", "red"];

let browser;
/** An empty page, that reckons. */
let reckoner;
before(async () => {
  browser = await launchForWalks();
  reckoner = await browser.newPage();
});
after(() => browser.close());

/** All that is wrong with a screen, by what and in which looks. */
async function look(stop, hand) {
  const place = STOPS.indexOf(stop);
  const wrong = new Map();
  const tell = (what, where) => wrong.set(what, [...(wrong.get(what) ?? []), where]);
  for (const one of every ? ALL : covering(place)) {
    await dress(hand.page, one);
    for (const what of await faults(hand.page, one)) tell(what, named(one));
  }
  for (const theme of every ? THEMES : [THEMES[place % 3]]) {
    await dress(hand.page, { ...USUAL, theme });
    for (const what of await axeFinds(hand.page)) tell(what, theme);
  }
  await dress(hand.page, { ...USUAL, theme: "red" });
  const { mean } = await brightness(reckoner, await hand.page.screenshot());
  // The letters of a made-up language are more than those of any other.
  if (mean >= DIM && !language && !WHITE.includes(stop)) tell(`mean luminance ${(mean * 100).toFixed(2)} %`, "red");
  await dress(hand.page, USUAL);
  const ids = (await hand.text()).match(/\b(ui|fact|error|exam|finding|own|slot|watch|status)-[a-z]+-[a-z-]*\b/g);
  if (ids) tell(`ids of messages: ${ids}`, "text");
  return [...wrong].map(([what, where]) => `${stop}: ${what} (${where.length > 2 ? `${where.length} looks, such as ${where[0]}` : where.join("; ")})`);
}

describe("every screen", { concurrency: 2 }, () => {
  for (const name of Object.keys(WALKS)) {
    test(`${name}: ${Object.keys(WALKS[name]).length} screens`, { timeout: every ? 3_600_000 : 240_000 }, async () => {
      const wrong = [];
      // A walk that ends early still tells what it found on the way.
      const ended = await walk(browser, name, async (stop, hand) => wrong.push(...(await look(stop, hand))), { language }).catch(String);
      if (ended) wrong.push(ended);
      assert.equal(wrong.length, 0, wrong.join("\n"));
    });
  }
});
