// The page's own process dies in the third stage: a new page has every mark and the right times.

import assert from "node:assert/strict";
import { test } from "node:test";
import { setTimeout as sleep } from "node:timers/promises";

import { createPractice } from "./birth.mjs";
import { Phone, emptyPhone, launch } from "./browser.mjs";
import { at, call } from "./core.mjs";

/** How soon the running clock is on the screen again, ms. */
const BACK_MS = 10_000;

/** Seconds on a clock such as 2:05. */
const seconds = (text) => {
  const [minutes, rest] = /(\d+):(\d\d)/.exec(text).slice(1).map(Number);
  return minutes * 60 + rest;
};

test("the page's process is killed in mid-birth, and the clock is back at once", { timeout: 60_000 }, async (t) => {
  const browser = await launch();
  t.after(() => browser.close());
  const { hand } = await emptyPhone(t, browser);
  await createPractice(hand);
  const born = performance.now();
  await hand.tap('[data-test="baby-born"]');
  await hand.find('[data-test="mark-cord_clamped"]');
  await sleep(1_400);
  await hand.tap('[data-test="mark-cord_clamped"]');
  await hand.page.getByRole("status").filter({ hasText: "Cord clamped" }).first().waitFor();

  const where = hand.page.url();
  const crashed = new Promise((done) => hand.page.once("crash", done));
  hand.page.goto("chrome://crash").catch(() => {});
  await crashed;
  const down = performance.now();
  const page = await hand.page.context().newPage();
  await page.goto(where);
  const again = new Phone(page);
  await again.find('[data-test="clock"]');
  const took = performance.now() - down;
  t.diagnostic(`back after ${Math.round(took)} ms`);
  assert.ok(took < BACK_MS, `${took} ms`);
  const near = (text) => Math.abs(seconds(text) - (performance.now() - born) / 1000) <= 2;
  assert.ok(near(await again.textOf('[data-test="clock"]')), "the large clock");
  await again.tap('[data-test="back"]');
  assert.ok(near(await again.textOf('[data-test="birth"] .clock')), "the list");
  const { births } = await call(again, { request: "births", skip: 0, take: 9 });
  const { timeline } = await call(again, { request: "birth", birth: births[0].birth });
  const kinds = timeline.map((one) => one.fact.kind);
  assert.equal(births.length, 1);
  for (const kind of ["baby_born", "cord_clamped"]) assert.equal(kinds.filter((one) => one === kind).length, 1, `${kind} in ${kinds}`);
  await again.tap('[data-test="birth"]');
  await again.find('[data-test="clock"]');
  assert.equal(await again.has('[data-test="mark-cord_clamped"]'), false, "what is marked is not offered again");
});
