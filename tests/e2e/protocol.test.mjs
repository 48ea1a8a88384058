// The practice's own protocol: empty, filled, changed, chosen, used at a birth, written to a file and read from one.

import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { after, before, test } from "node:test";

import { createPractice } from "./birth.mjs";
import { emptyPhone, launch, picturesIn } from "./browser.mjs";
import { at } from "./core.mjs";

const LIMIT = "blood-loss.limit.over.1";

let browser;
before(async () => {
  browser = await launch();
});
after(() => browser.close());

const pictures = picturesIn("protocol");

/** Takes a picture, and holds the page to what every screen keeps to. */
function looker(hand) {
  const picture = pictures(hand);
  return async (name) => {
    await picture(name);
    const { text, over } = await hand.page.evaluate(() => ({
      text: document.body.innerText,
      over: document.documentElement.scrollWidth - document.documentElement.clientWidth,
    }));
    assert.equal(over, 0, `${name} is ${over} px wider than the screen`);
    const ids = text.match(/\b(ui|own|slot|state|protocol-file|value|status|watch|error)-[a-z]+[a-z-]*\b/g);
    assert.equal(ids, null, `${name} shows ids of messages`);
  };
}

async function toPractice(hand) {
  await hand.tap('[data-test="menu"]');
  await hand.tap('[data-test="practice"]');
}

async function toOwn(hand) {
  await hand.tap('[data-test="own-protocol"]');
  await at(hand, "own-count").waitFor();
}

/** Opens a field of an unfolded group, and waits until its sheet is gone again. */
async function inField(hand, slot, work) {
  await hand.tap(`[data-test="own-field-${slot}"]`);
  await at(hand, "own-save").waitFor();
  await work();
  await at(hand, "own-save").waitFor({ state: "detached" });
}

async function says(hand, name, words) {
  await hand.page.locator(`[data-test="${name}"]`, { hasText: words }).first().waitFor();
}

/** Fills it with the strictest, and names it. */
async function fill(hand) {
  await hand.tap('[data-test="own-fill"]');
  await says(hand, "own-count", /^3 of \d+ open/);
  await hand.tap('[data-test="own-head"]');
  await hand.type('[data-test="own-title"]', "Harbour protocol");
  await hand.type('[data-test="own-edition"]', "first, 2026");
  await hand.type('[data-test="own-checked"]', "2026-11-25");
  await hand.tap('[data-test="own-head-save"]');
  await says(hand, "own-count", "Nothing is open");
}

/** Puts a limit of 400 mL of the practice's own. */
async function limit(hand) {
  await inField(hand, LIMIT, async () => {
    await hand.type('[data-test="own-value"]', "400");
    await hand.page.locator('[data-test="own-value"]').press("Tab");
    await hand.type('[data-test="own-source"]', "meeting of March");
    await hand.tap('[data-test="own-save"]');
  });
}

test("an own protocol starts empty, is filled and changed, and its limit is told at a birth", { timeout: 180_000 }, async (t) => {
  const { hand } = await emptyPhone(t, browser);
  const look = looker(hand);
  await createPractice(hand);
  await toPractice(hand);
  await says(hand, "own-open", /^Your own protocol: (\d+) of \1 fields are open/);
  assert.equal(await at(hand, "protocol-own").count(), 0, "not offered before it is finished");
  await toOwn(hand);
  await look("empty");
  await hand.tap('[data-test="own-group-own-blood"]');
  await look("blood-open");
  // A number without a source is refused, and nothing is kept.
  await hand.tap(`[data-test="own-field-${LIMIT}"]`);
  await look("field-open");
  assert.ok(await at(hand, "own-save").isDisabled(), "no number is there beforehand");
  await hand.tap('[data-test="own-value-more"]');
  await hand.tap('[data-test="own-save"]');
  await says(hand, "own-field-error", "Every number needs its source");
  await hand.tap('[data-test="sheet-close"]');
  await fill(hand);
  await look("filled");
  await inField(hand, LIMIT, async () => {
    // What was taken over keeps its number with its source.
    assert.equal(await at(hand, "own-source").inputValue(), "");
    await look("field-taken");
    await hand.tap('[data-test="sheet-close"]');
  });
  await limit(hand);
  await says(hand, `own-field-${LIMIT}`, "≥ 400 mL");
  await says(hand, "own-log", /Blood loss: limit: ≥ 500 mL \(.*\) → ≥ 400 mL \(meeting of March · our own choice, no source\)/);
  await says(hand, "own-log", "Ida Lindqvist");
  await hand.tap('[data-test="own-group-own-windows"]');
  await inField(hand, "time-to-urine.caution.over.1", () => hand.tap('[data-test="own-off"]'));
  await says(hand, "own-field-time-to-urine.caution.over.1", "off");
  await look("changed");
  await hand.tap('[data-test="own-back"]');
  await hand.tap('[data-test="protocol-own"]');
  await hand.tap('[data-test="practice-save"]');
  await at(hand, "practice-saved").waitFor();
  await look("chosen");
  await hand.tap('[data-test="practice-back"]');
  await hand.tap('[data-test="baby-born"]');
  await hand.tap('[data-test="enter-blood"]');
  await hand.tap('[data-test="loss-jug"]');
  await hand.type('[data-test="loss-volume"]', "420");
  await hand.page.locator('[data-test="loss-volume"]').press("Tab");
  await hand.tap('[data-test="save"]');
  const notice = hand.page.locator('[data-test="notice-limit"]', { hasText: "400 mL" }).first();
  await notice.locator("button").tap();
  await notice.locator("text=Harbour protocol: meeting of March").waitFor();
  await look("birth");
  assert.deepEqual(hand.problems, []);
});

test("a limit from memory is marked as unverified on the screen of a birth", { timeout: 120_000 }, async (t) => {
  const { hand } = await emptyPhone(t, browser);
  await createPractice(hand, async () => {}, "who");
  await hand.tap('[data-test="baby-born"]');
  await hand.tap('[data-test="more"]');
  await hand.tap('[data-test="enter-mother_observed"]');
  await hand.type('[data-test="pulse"]', "130");
  await hand.page.locator('[data-test="pulse"]').press("Tab");
  await hand.tap('[data-test="save"]');
  await hand.page.locator('[data-test="notice-limit"]', { hasText: "unverified" }).first().waitFor();
});

test("a file goes out and comes in, and a bad one is told by line and path", { timeout: 180_000 }, async (t) => {
  const { hand } = await emptyPhone(t, browser, { width: 320, height: 568 });
  const look = looker(hand);
  await createPractice(hand);
  await toPractice(hand);
  await toOwn(hand);
  assert.ok(await at(hand, "own-export").isDisabled());
  await fill(hand);
  await hand.tap('[data-test="own-group-own-blood"]');
  await limit(hand);
  await hand.tap('[data-test="own-export"]');
  const text = readFileSync(await hand.textOf('[data-test="own-path"]'), "utf8");
  assert.match(text, /title = "Harbour protocol"/);
  const read = (name, text) =>
    hand.page.setInputFiles('[data-test="own-import"]', { name, mimeType: "text/plain", buffer: Buffer.from(text) });
  await read("bad.toml", text.replace('level = "limit"', 'level = "alarm"').replace("meeting of March", " "));
  await says(hand, "own-refused", /2 things are wrong/);
  const told = await at(hand, "own-refused").locator("li").allInnerTexts();
  const line = (of) => text.split("\n").findIndex((one) => one.includes(of)) + 1;
  assert.match(told[0], new RegExp(`^line ${line('level = "limit"')}, watch\\[\\d\\]\\.step\\[\\d\\]\\.level: must be one of: note, caution, limit$`));
  assert.match(told[1], new RegExp(`^line ${line("meeting of March")}, watch\\[\\d\\]\\.step\\[\\d\\]\\.source: every number needs its source$`));
  await look("refused-320");
  await says(hand, `own-field-${LIMIT}`, "≥ 400 mL");
  await read("other.toml", text.replace("value = 400.0", "value = 350.0"));
  await says(hand, "own-imported", "Read: one field was changed.");
  await says(hand, `own-field-${LIMIT}`, "≥ 350 mL");
  await says(hand, "own-log", /≥ 400 mL .* → ≥ 350 mL/);
  await read("other.toml", text.replace("value = 400.0", "value = 350.0"));
  await says(hand, "own-imported", "The file says what stands here already.");
  await look("read-320");
  assert.deepEqual(hand.problems, []);
});
