// The drawing of a placenta under the finger, and the papers that go with it.

import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { after, before, test } from "node:test";

import { createPractice, mark } from "./birth.mjs";
import { emptyPhone, launch, picturesIn } from "./browser.mjs";

const pictures = picturesIn("sketch");
let browser;
before(async () => {
  browser = await launch();
});
after(() => browser.close());

/** A birth with its placenta, and the list of the examination before it. */
async function atTheList(t) {
  const { hand } = await emptyPhone(t, browser);
  await createPractice(hand);
  await mark(hand, '[data-test="baby-born"]');
  await mark(hand, '[data-test="mark-cord_clamped"]');
  await mark(hand, '[data-test="mark-placenta_born"]');
  await hand.tap('[data-test="tab-exam"]');
  await hand.tap('[data-test="exam-list"]');
  await hand.find('[data-test="exam-sketch"]');
  return hand;
}

async function answer(hand, item, ...taps) {
  await hand.tap(`[data-test="exam-jump-${item}"]`);
  for (const name of taps) await hand.tap(`[data-test="${name}"]`);
  await hand.tap('[data-test="exam-list"]');
}

/** Touches the drawing, at shares of its width and height from its upper left corner. */
async function touch(hand, across, down) {
  const pad = hand.page.locator('[data-test="sketch-pad"]');
  await pad.scrollIntoViewIfNeeded();
  const box = await pad.boundingBox();
  await hand.page.touchscreen.tap(box.x + box.width * across, box.y + box.height * down);
  await hand.page.waitForTimeout(200);
}

test("points are set, moved, undone, given a width and recorded", async (t) => {
  const hand = await atTheList(t);
  const look = pictures(hand);
  await answer(hand, "disc-length", "quick-200");
  await answer(hand, "disc-breadth", "quick-180");
  await answer(hand, "maternal-surface", "pick-firm-areas", "exam-keep");
  await hand.tap('[data-test="exam-sketch"]');
  await touch(hand, 0.6, 0.45);
  await look("cord-set");
  await hand.tap('[data-test="sketch-side-maternal"]');
  await touch(hand, 0.3, 0.4);
  await hand.tap('[data-test="quick-20"]');
  await touch(hand, 0.6, 0.6);
  await touch(hand, 0.7, 0.3);
  await hand.tap('[data-test="sketch-undo"]');
  await look("firm-areas");
  await hand.tap('[data-test="sketch-back"]');
  await hand.find('[data-test="exam-sketch"]');
  assert.match(await hand.textOf('[data-test="exam-sketch"]'), /3 places/);
  await look("list");

  await hand.tap('[data-test="exam-sketch"]');
  await touch(hand, 0.4, 0.5);
  await hand.tap('[data-test="sketch-keep"]');
  await look("cord-moved");
  await hand.tap('[data-test="sketch-remove"]');
  await hand.tap('[data-test="sketch-back"]');
  assert.match(await hand.textOf('[data-test="exam-sketch"]'), /2 places/);
  await hand.tap('[data-test="tab-timeline"]');
  const told = await hand.text();
  assert.match(told, /Firm area: 2 places marked on the drawing, 2 cm/);
  assert.match(told, /Taken off the drawing/);
  assert.deepEqual(hand.problems, []);
});

test("each paper is a file that another program reads", async (t) => {
  const hand = await atTheList(t);
  await hand.tap('[data-test="exam-files"]');
  for (const [paper, words] of [["laboratory", "Request to examine a placenta"], ["family", "Placenta taken by the family"]]) {
    await hand.tap(`[data-test="file-${paper}-1"]`);
    await hand.find(`[data-test="file-${paper}-1"] ~ .file`);
    const path = (await hand.textOf('[data-test="file-path"]')).trim();
    assert.ok(path.includes(`/${paper}-`), path);
    const text = execFileSync("pdftotext", ["-layout", path, "-"], { encoding: "utf8" });
    assert.ok(text.includes(words) && text.includes("Ida Lindqvist"), text);
  }
  await pictures(hand)("papers");
  assert.deepEqual(hand.problems, []);
});
