// Charting afterwards, on a laptop: the birth as a picture, and the examination as a form, both by keys alone.

import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import { setTimeout as sleep } from "node:timers/promises";

import { Phone, emptyPhone, launch, picturesIn, until } from "./browser.mjs";

const pictures = picturesIn("charting");
const LAPTOP = { width: 1280, height: 800 };
let browser;
before(async () => {
  browser = await launch();
});
after(() => browser.close());

/** A rehearsed birth that was played to its end, open in the page of a laptop; and the address for further pages. */
async function played(t, scenario) {
  const { hand, bridge } = await emptyPhone(t, browser, LAPTOP);
  const token = new URL(bridge.address).hash.slice("#token=".length);
  const call = (request) =>
    hand.page.evaluate(
      async ([body, bearer]) => (await fetch("/call", { method: "POST", headers: { authorization: `Bearer ${bearer}` }, body: JSON.stringify(body) })).json(),
      [request, token],
    );
  const { rehearsal } = await call({ request: "rehearse", scenario, speed: 600, mode: "watch" });
  while (!(await call({ request: "status" })).rehearsal.ended) await sleep(100);
  await hand.anew();
  await hand.tap('[data-test="birth"]');
  const view = () => call({ request: "birth", birth: rehearsal.birth });
  return { hand, page: hand.page, view, address: bridge.address };
}

/** Where the focus is, by the name for tests of the element or of one about it. */
const focused = (page) => page.evaluate(() => document.activeElement?.closest("[data-test]")?.getAttribute("data-test") ?? null);

/** Goes on with the Tab key until something of this name has the focus. */
async function tabTo(page, name, key = "Tab") {
  for (let n = 0; n < 90; n += 1) {
    if ((await focused(page)) === name) return;
    await page.keyboard.press(key);
  }
  assert.fail(`${name} is not reached with ${key}`);
}

const points = (page) => page.locator('[data-test="point"]').count();

test("a birth is read, put right and added to in the picture, by keys alone", async (t) => {
  const { hand, page, view, address } = await played(t, "quiet-night");
  await hand.tap('[data-test="tab-timeline"]');
  await page.locator('[data-test="point"]').first().waitFor();
  const { timeline } = await view();
  await page.keyboard.press("Tab");
  await tabTo(page, "picture-whole");
  await tabTo(page, "point");
  assert.equal(await page.locator('[data-test="point"][tabindex="0"]').count(), 1, "one stop of the Tab key for all");

  assert.equal(await points(page), timeline.length, "an entry of the record, a sign in the picture");

  // Closer by key, and back: how many are out of sight is told.
  const hidden = async () => {
    const told = [await hand.textOf('[data-test="picture-earlier"]'), await hand.textOf('[data-test="picture-later"]')];
    return told.reduce((sum, text) => sum + Number(/\d+/.exec(text)?.[0] ?? 0), 0);
  };
  const course = await hidden();
  await page.keyboard.press("+");
  await page.keyboard.press("+");
  await until("a closer look leaves some out of sight", async () => (await hidden()) > course + 10);
  assert.equal(await focused(page), "point", "focus stays where it was");
  await page.keyboard.press("0");
  await until("0 shows the whole birth", async () => (await hidden()) === course);
  // The signature is the record's own time, after the course of the birth.
  await page.keyboard.press("End");
  await until("the last entry is come to", async () => (await page.evaluate(() => document.activeElement?.getAttribute("data-kind"))) === "signed");

  // Arrows go through the entries in order of time, each with its name.
  await page.keyboard.press("Home");
  await page.keyboard.press("0");
  const heard = [];
  for (let n = 0; n < 60; n += 1) {
    await sleep(40);
    const [kind, name] = await page.evaluate(() => [document.activeElement?.getAttribute("data-kind"), document.activeElement?.getAttribute("aria-label")]);
    heard.push(name);
    if (kind === "mother_observed") break;
    await page.keyboard.press("ArrowRight");
  }
  assert.match(heard.at(-1), /^\d\d:\d\d:\d\d, 15:00 after the birth, Mother: pulse 84, blood pressure 118\/72/);
  const seen = timeline.slice(0, heard.length).map(({ clock }) => clock);
  assert.deepEqual(heard.map((name) => name.slice(0, 8)), seen, "in the order of the record");
  const entry = await page.evaluate(() => document.activeElement.getAttribute("data-entry"));
  assert.equal(await page.locator('[data-line][aria-current="true"]').getAttribute("data-line"), entry, "its line is marked");
  // What held at that moment stands beside the names.
  assert.match(await page.locator('[data-test="lane"]', { hasText: "Pulse" }).innerText(), /84 a minute/);

  await page.keyboard.press("Enter");
  await page.locator('[data-test="correct"]').waitFor();
  await page.keyboard.press("Escape");
  await until("focus comes back to the entry", async () => (await focused(page)) === "point");
  await page.keyboard.press("Enter");
  await tabTo(page, "correct");
  await page.keyboard.press("Enter");
  await tabTo(page, "reason");
  await page.keyboard.type("Read off the other watch");
  await tabTo(page, "when-typed", "Shift+Tab");
  await page.keyboard.press("Enter");
  await tabTo(page, "when-clock");
  const before = timeline.find((line) => line.entry === entry).clock;
  const [hours, minutes] = before.split(":").map(Number);
  const earlierClock = new Date(Date.UTC(2000, 0, 2, hours, minutes - 2)).toISOString().slice(11, 16);
  await page.keyboard.press("Control+A");
  await page.keyboard.type(earlierClock);
  await tabTo(page, "save");
  await page.keyboard.press("Enter");
  const corrected = page.locator(`[data-entry="${entry}"][data-corrected="true"]`);
  await corrected.waitFor();
  assert.match(await corrected.getAttribute("aria-label"), new RegExp(`^${earlierClock},.*put right`));
  await until("focus comes back to the entry that was put right", () => corrected.evaluate((node) => node === document.activeElement));

  // The cursor is moved along the axis, and a late entry added there.
  await tabTo(page, "picture-axis", "Shift+Tab");
  for (let n = 0; n < 5; n += 1) await page.keyboard.press("ArrowRight");
  const text = await page.locator('[data-test="picture-axis"]').getAttribute("aria-valuetext");
  const clock = text.slice(0, 5);
  assert.equal(await hand.textOf('[data-test="picture-add"]'), `Add at ${clock}`);
  await tabTo(page, "picture-add", "Shift+Tab");
  await page.keyboard.press("Enter");
  await tabTo(page, "enter-noted");
  await page.keyboard.press("Enter");
  await tabTo(page, "note-text");
  await page.keyboard.type("Window opened");
  await tabTo(page, "when-clock");
  assert.equal(await page.locator('[data-test="when-clock"]').inputValue(), clock);
  await tabTo(page, "save");
  await page.keyboard.press("Enter");
  await page.locator(`[data-test="point"][data-kind="noted"][aria-label^="${clock},"]`).waitFor();
  const added = (await view()).timeline.find((line) => line.fact.kind === "noted" && line.fact.data.text === "Window opened");
  assert.equal(added.clock, clock);

  // The same as a table, each row with its entry.
  await page.locator('[data-test="picture-table"]').focus();
  await page.keyboard.press("Enter");
  await until("a row for each entry", async () => (await page.locator('[data-test="picture-as-table"] tbody tr').count()) === timeline.length + 1);
  assert.match(await page.locator('[data-test="picture-as-table"]').innerText(), /Window opened/);
  await hand.tap('[data-test="picture-table"]');
  await underMouse(page, hidden);
  assert.deepEqual(hand.problems, []);
  await onPhone(await Phone.open(browser, address, { width: 411, height: 891 }), (await view()).timeline);
});

/** A wheel with Ctrl looks closer, a drag moves along and opens nothing. */
async function underMouse(page, hidden) {
  const axis = page.locator('[data-test="picture-axis"]');
  const box = await axis.boundingBox();
  await page.mouse.move(box.x + box.width / 2, box.y + 90);
  const before = await hidden();
  await page.keyboard.down("Control");
  await page.mouse.wheel(0, -100);
  await page.mouse.wheel(0, -100);
  await page.keyboard.up("Control");
  await until("the wheel looks closer", async () => (await hidden()) > before);
  const labels = await axis.innerText();
  await page.mouse.down();
  await page.mouse.move(box.x + box.width / 2 + 150, box.y + 90, { steps: 5 });
  await page.mouse.up();
  await until("a drag moves along", async () => (await axis.innerText()) !== labels);
  assert.equal(await page.locator('[role="dialog"]').count(), 0);
}

/** It has the whole screen there, and a thumb finds the nearest entry, or the pile. */
async function onPhone(hand, timeline) {
  const { page } = hand;
  await hand.tap('[data-test="birth"]');
  await hand.tap('[data-test="tab-timeline"]');
  assert.equal(await page.locator('[data-test="picture"]').count(), 0);
  await hand.tap('[data-test="picture-open"]');
  const pile = page.locator('[data-test="point"][data-kind="examined"]').first();
  await pile.scrollIntoViewIfNeeded();
  const box = await pile.boundingBox();
  await page.touchscreen.tap(box.x + box.width + 12, box.y + box.height / 2);
  await page.locator('[data-test="picture-pile"]').waitFor();
  const examined = timeline.filter(({ fact }) => fact.kind === "examined").length;
  assert.equal(await page.locator('[data-test="picture-pile"] li').count(), examined, "a pile shows what lies on it");
  await hand.tap('[data-test="picture-pile"] li button');
  await page.locator('[data-test="correct"]').waitFor();
  await page.keyboard.press("Escape");
  await pinch(hand);
  assert.deepEqual(hand.problems, []);
}

/** Two fingers pull the picture apart, and press it together again; nothing is opened by that. */
async function pinch(hand) {
  const { page } = hand;
  const axis = page.locator('[data-test="picture-axis"]');
  await axis.scrollIntoViewIfNeeded();
  const { x, y, width } = await axis.boundingBox();
  const [middle, below] = [x + width / 2, y + 24];
  const cdp = await page.context().newCDPSession(page);
  const fingers = (apart) => [-apart, apart].map((by, id) => ({ x: middle + by, y: below, id }));
  const labels = async () => (await axis.innerText()).split("\n");
  const pull = async (from, to) => {
    await cdp.send("Input.dispatchTouchEvent", { type: "touchStart", touchPoints: fingers(from) });
    for (let n = 1; n <= 5; n += 1) await cdp.send("Input.dispatchTouchEvent", { type: "touchMove", touchPoints: fingers(from + ((to - from) * n) / 5) });
    await cdp.send("Input.dispatchTouchEvent", { type: "touchEnd", touchPoints: [] });
  };
  const minutes = async () => {
    const [first, second] = (await labels()).map((text) => text.split(":").reduce((sum, part) => sum * 60 + Number(part), 0) * (text.length > 5 ? 1 : 60));
    return second - first;
  };
  await page.locator('[data-test="picture-whole"]').tap();
  const wide = await minutes();
  await pull(20, 120);
  await until("two fingers look closer", async () => (await minutes()) < wide);
  await pull(120, 20);
  await until("and wider again", async () => (await minutes()) === wide);
  assert.equal(await page.locator('[data-test="correct"]').count(), 0);
}

test("the examination is filled in by keys alone, whatever the kind of item", async (t) => {
  const { hand, page, view } = await played(t, "slow-placenta");
  const look = pictures(hand);
  const exam = async () => (await view()).examinations[0];
  await hand.tap('[data-test="tab-exam"]');
  await hand.tap('[data-test="exam-list"]');
  await hand.tap('[data-test="exam-page"]');
  await page.locator('[data-test="exam-still-open"]').waitFor();
  await look("form-open");
  const { items } = await exam();
  const kinds = new Set(items.map(({ kind }) => kind));
  assert.ok(kinds.size >= 5, [...kinds].join());
  await page.locator('[data-test="exam-page-off"]').focus();
  let filled = 0;
  for (const { item, kind, min } of items) {
    const name = `page-${item}`;
    // An item is one stop of the Tab key, and its field of figures a second one.
    const inside = () => page.evaluate((of) => (document.activeElement?.closest(`[data-test="${of}"]`) ? document.activeElement.tagName : null), name);
    let tag = null;
    for (let tabs = 0; tabs < 3 && tag === null; tabs += 1) {
      await page.keyboard.press("Tab");
      tag = await inside();
    }
    assert.ok(tag, `${name} is reached with the Tab key`);
    // One of each kind is enough.
    if (!kinds.delete(kind)) continue;
    if (tag === "INPUT") await page.keyboard.type(String(min + 3));
    // The second answer of a choice, to have gone there by an arrow.
    else if (kind === "choice") await page.keyboard.press("ArrowRight");
    await page.keyboard.press("Enter");
    // In steps: pieces are added and then said to be all, coils are counted and then measured over.
    if (kind === "pieces" || kind === "coils") {
      await page.locator(`[data-test="${name}"] .so-far`).waitFor();
      await page.keyboard.press("Enter");
    }
    await page.locator(`[data-test="${name}"]:not(.open)`).waitFor();
    filled += 1;
    await until(`${name} is on disk`, async () => (await exam()).answered === filled);
    // The page has its time to look at the birth again.
    await sleep(300);
    await until(`focus stays at ${name}`, async () => (await inside()) !== null);
  }
  const now = await exam();
  assert.equal(now.answered, filled);
  const open = now.items.filter(({ answer }) => answer === null).length;
  await until("what is open is told", async () => (await page.locator('[data-test="exam-still-open"] li').count()) === open);
  await look("form-filled");
  await look("form-filled");

  // A value that is not offered is typed, and takes the place of the first.
  await page.locator('[data-test="page-insertion-edge"] button[tabindex="0"]').focus();
  for (let n = 0; n < 20 && (await focused(page)) !== "exam-other-value"; n += 1) await page.keyboard.press("ArrowRight");
  await page.keyboard.press("Enter");
  await until("the field of figures has the focus", async () => (await focused(page)) === "pad-display");
  await page.keyboard.type("4.5");
  await page.keyboard.press("Enter");
  await page.locator('[data-test="page-insertion-edge"] legend b', { hasText: "4.5 cm" }).waitFor();
  assert.equal((await exam()).answered, filled, "put right, not answered a second time");
  assert.deepEqual(hand.problems, []);
});
