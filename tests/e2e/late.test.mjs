// A disk that takes its time: what is typed, touched or left before the answer comes.

import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import { setTimeout as sleep } from "node:timers/promises";

import { PASSPHRASE, createPractice } from "./birth.mjs";
import { emptyPhone, launch, picturesIn, until } from "./browser.mjs";
import { at, call, now } from "./core.mjs";
import { limitFiles } from "./device.mjs";

const LATE_MS = 800;
let browser;
before(async () => {
  browser = await launch();
});
after(() => browser.close());

/** A practice on a phone of its own; `tap` touches what has this name for the tests. */
async function begin(t) {
  const { bridge, hand } = await emptyPhone(t, browser);
  await createPractice(hand);
  return { bridge, hand, tap: (name) => hand.tap(`[data-test="${name}"]`), look: picturesIn("late")(hand) };
}

/** One baby whose placenta is born; the page is open at the first item of the examination. */
async function examination(t) {
  const { hand, tap } = await begin(t);
  const { birth } = await call(hand, { request: "register_birth", label: "Harbour" });
  await call(hand, { request: "record", birth, fact: { kind: "baby_born", data: { baby: 1 } }, at: now });
  await call(hand, { request: "record", birth, fact: { kind: "placenta_born", data: { babies: [1] } }, at: now });
  await hand.anew();
  await tap("birth");
  await tap("tab-exam");
  await at(hand, "exam-question").waitFor();
  const exam = async () => (await call(hand, { request: "birth", birth })).examinations[0];
  const asked = () => at(hand, "exam-question").getAttribute("data-item");
  return { hand, tap, birth, exam, asked, items: (await exam()).items };
}

test("a field that has its text from the core takes none before it is there", { timeout: 60_000 }, async (t) => {
  const { hand, tap, look } = await begin(t);
  await tap("menu");
  await tap("practice");
  await hand.type('[data-test="term-years"]', "25");
  await tap("term-save");
  await at(hand, "term-saved").waitFor();

  await tap("practice-back");
  await hand.late(LATE_MS);
  await tap("menu");
  await tap("practice");
  assert.equal(await at(hand, "term-years").isDisabled(), true, "its text is not there yet");
  assert.equal(await at(hand, "term-save").isDisabled(), true);
  await look("term-not-yet");
  await hand.type('[data-test="term-years"]', "30");
  await sleep(2 * LATE_MS);
  assert.equal(await at(hand, "term-years").inputValue(), "30");

  await tap("server");
  assert.equal(await at(hand, "server-address").isDisabled(), true);
  await hand.type('[data-test="server-address"]', "https://example.org/fhir");
  await sleep(2 * LATE_MS);
  assert.equal(await at(hand, "server-address").inputValue(), "https://example.org/fhir");
  assert.deepEqual(hand.problems, []);
});

test("a list that has not been read is not written over by its first addition", { timeout: 60_000 }, async (t) => {
  const { hand, tap } = await begin(t);
  const kept = { name: "ergometrine", dose: "500 micrograms", route: "IM", uterotonic: true };
  await call(hand, { request: "list_medicines", medicines: [kept] });
  await tap("menu");
  await tap("practice");
  await hand.late(2 * LATE_MS);
  await tap("medicines");
  await hand.type('[data-test="list-name"]', "arnica");
  await tap("list-uterotonic-no");
  assert.equal(await at(hand, "medicines-list").count(), 0, "it is not there yet");
  await tap("medicines-add");
  await at(hand, "medicines-remove-1").waitFor();
  await hand.late(0);
  const { medicines } = await call(hand, { request: "medicines" });
  assert.deepEqual(medicines.map(({ name }) => name), ["ergometrine", "arnica"]);
});

test("who goes on in the examination before an answer is on disk stays where she went", { timeout: 60_000 }, async (t) => {
  const { hand, tap, exam, asked, items } = await examination(t);
  await tap("exam-skip");
  const first = items[1].item;
  assert.equal(await asked(), first);
  await hand.late(LATE_MS);

  // To the list and from there to another item.
  await tap("exam-could-not-tell");
  await tap("exam-list");
  await tap("exam-jump-maternal-surface");
  await sleep(4 * LATE_MS);
  assert.equal(await asked(), "maternal-surface");

  // Past the next one, and an item that the answer brings comes in before it.
  await tap("exam-list");
  await tap("exam-jump-insertion");
  await tap("option-velamentous");
  const next = items[items.findIndex((one) => one.item === "insertion") + 1].item;
  await tap("exam-skip");
  assert.equal(await asked(), next);
  await sleep(4 * LATE_MS);
  assert.equal(await asked(), next, "no question changes under a finger");
  await hand.late(0);
  const answered = (await exam()).items.filter((one) => one.answer !== null).map((one) => one.item);
  assert.deepEqual(answered, [first, "insertion"]);
  assert.ok((await exam()).items.some((one) => one.item === "insertion-edge"), "the answer brought one");
  assert.deepEqual(hand.problems, []);
});

test("of two marks on their way only the later is taken back, and a touch that comes again is kept beside its mark", { timeout: 60_000 }, async (t) => {
  const { hand, tap, look } = await begin(t);
  await tap("baby-born");
  await at(hand, "mark-cord_clamped").waitFor();
  await sleep(1_500);
  await hand.late(4 * LATE_MS);
  await tap("mark-cord_clamped");
  await sleep(LATE_MS);
  await tap("mark-cord_pulsation_stopped");
  await sleep(LATE_MS);
  // Past the second in which a touch is a repeat: the button still says that it is being saved.
  await tap("mark-cord_clamped");
  await look("two-on-their-way");
  await at(hand, "undo").waitFor();
  assert.match(await hand.textOf(".undo"), /pulsation/i, "not the earlier one, which a touch would no longer mean");
  await hand.late(0);
  await tap("undo");
  await at(hand, "undo").waitFor({ state: "detached" });
  const { births } = await call(hand, { request: "births", skip: 0, take: 1 });
  const { timeline } = await call(hand, { request: "birth", birth: births[0].birth });
  const marks = timeline.filter(({ fact }) => fact.kind.startsWith("cord_")).map(({ fact, retracted }) => [fact.kind, retracted]);
  assert.deepEqual(marks, [["cord_clamped", false], ["cord_pulsation_stopped", true]]);
  const clamped = timeline.find(({ fact }) => fact.kind === "cord_clamped");
  assert.equal(clamped.again.length, 1, "the touch that came again is kept beside its mark");
  assert.deepEqual(hand.problems, []);
});

test("what is set on the drawing while it is written is not lost under it", { timeout: 60_000 }, async (t) => {
  const { hand, tap, birth } = await examination(t);
  const touch = async (across, down) => {
    const pad = at(hand, "sketch-pad");
    await pad.scrollIntoViewIfNeeded();
    const box = await pad.boundingBox();
    await hand.page.touchscreen.tap(box.x + box.width * across, box.y + box.height * down);
  };
  const point = async () => {
    const circle = at(hand, "sketch-pad").locator("circle.point");
    return [await circle.getAttribute("cx"), await circle.getAttribute("cy")].map(Number);
  };
  const recorded = async () => (await call(hand, { request: "sketch", birth, placenta: 1 })).items.flatMap((item) => item.places)[0];
  for (const [item, size] of [["disc-length", "quick-200"], ["disc-breadth", "quick-180"]]) {
    await tap("exam-list");
    await tap(`exam-jump-${item}`);
    await tap(size);
  }
  await tap("exam-list");
  await tap("exam-sketch");
  await touch(0.5, 0.45);
  await hand.late(LATE_MS);
  await tap("sketch-keep");
  await sleep(200);
  await touch(0.6, 0.5);
  const later = await point();
  await until("the first place is on disk", recorded);
  await sleep(3 * LATE_MS);
  assert.deepEqual(await point(), later, "the later place stays in sight");
  const first = await recorded();
  await hand.late(0);
  await tap("sketch-back");
  await at(hand, "exam-sketch").waitFor();
  const last = await recorded();
  assert.ok(last.x > first.x && last.y > first.y, `${JSON.stringify(first)}, then ${JSON.stringify(last)}`);
  assert.deepEqual(hand.problems, []);
});

test("what a sheet wrote and the disk refused is told after the sheet was left", { timeout: 60_000 }, async (t) => {
  const { bridge, hand, tap, look } = await begin(t);
  await tap("baby-born");
  await at(hand, "mark-cord_clamped").waitFor();
  limitFiles(bridge, 4096);
  await sleep(1_500);
  await tap("more");
  await tap("enter-noted");
  await hand.type('[data-test="note-text"]', "Father holds the lamp");
  await hand.late(LATE_MS);
  await sleep(700); // Four touches in half a second would be taken for water.
  await tap("save");
  await tap("sheet-close");
  await at(hand, "note-text").waitFor({ state: "detached" });

  // Another sheet is open when the answer comes: it stays, and what is typed in it.
  await tap("more");
  await tap("enter-noted");
  await hand.type('[data-test="note-text"]', "Kettle on");
  await at(hand, "not-saved").waitFor();
  assert.match(await hand.textOf('[data-test="not-saved"]'), /Note/);
  assert.equal(await at(hand, "note-text").inputValue(), "Kettle on");
  await look("not-saved");

  // After a refused write only another file takes anything, until the practice is opened anew.
  await hand.late(0);
  await tap("not-saved-elsewhere");
  await hand.page.locator("[data-test=not-saved]", { hasText: "Kept elsewhere" }).waitFor();
  await tap("not-saved-dismiss");
  limitFiles(bridge, "unlimited");
  await tap("sheet-close");
  await tap("elsewhere-lock");
  await tap("locked-unlock");
  await hand.type('[data-test="passphrase"]', PASSPHRASE);
  await tap("unlock");
  await tap("drained-done");
  await tap("birth");
  await tap("tab-timeline");
  await hand.page.locator("[data-test=timeline]", { hasText: "Father holds the lamp" }).waitFor();
  assert.deepEqual(hand.problems, []);
});
