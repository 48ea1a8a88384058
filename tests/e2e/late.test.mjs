// A disk that takes its time: what is typed, touched or left before the answer comes.

import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import { setTimeout as sleep } from "node:timers/promises";

import { PASSPHRASE, createPractice } from "./birth.mjs";
import { emptyPhone, launch, picturesIn, until } from "./browser.mjs";
import { at, call, now } from "./core.mjs";
import { limitFiles } from "./device.mjs";
import { camera, photograph } from "./photograph.mjs";

/** Time for a page that would go wrong to do so. */
const WHILE_MS = 600;
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
  const { bridge, hand, tap, look } = await begin(t);
  const { birth } = await call(hand, { request: "register_birth", label: "Harbour" });
  await call(hand, { request: "record", birth, fact: { kind: "baby_born", data: { baby: 1 } }, at: now });
  await call(hand, { request: "record", birth, fact: { kind: "placenta_born", data: { babies: [1] } }, at: now });
  await hand.anew();
  await tap("birth");
  await tap("tab-exam");
  await at(hand, "exam-question").waitFor();
  const exam = async () => (await call(hand, { request: "birth", birth })).examinations[0];
  const asked = () => at(hand, "exam-question").getAttribute("data-item");
  return { bridge, hand, tap, look, birth, exam, asked, items: (await exam()).items };
}

test("a field that has its text from the core takes none before it is there", { timeout: 60_000 }, async (t) => {
  const { hand, tap, look } = await begin(t);
  await tap("menu");
  const term = await hand.hold("term");
  await tap("practice");
  assert.equal(await at(hand, "term-years").isDisabled(), true, "its text is not there yet");
  assert.equal(await at(hand, "term-save").isDisabled(), true);
  await look("term-not-yet");
  await term.all();
  await hand.type('[data-test="term-years"]', "30");

  const server = await hand.hold("server");
  await tap("server");
  assert.equal(await at(hand, "server-address").isDisabled(), true);
  await server.all();
  await hand.type('[data-test="server-address"]', "https://example.org/fhir");
  await sleep(WHILE_MS);
  assert.equal(await at(hand, "server-address").inputValue(), "https://example.org/fhir");
  assert.deepEqual(hand.problems, []);
});

test("a list that has not been read is not written over by its first addition", { timeout: 60_000 }, async (t) => {
  const { hand, tap } = await begin(t);
  const kept = { name: "ergometrine", dose: "500 micrograms", route: "IM", uterotonic: true };
  await call(hand, { request: "list_medicines", medicines: [kept] });
  await tap("menu");
  await tap("practice");
  const list = await hand.hold("medicines");
  await tap("medicines");
  await hand.type('[data-test="list-name"]', "arnica");
  await tap("list-uterotonic-no");
  assert.equal(await at(hand, "medicines-add").isDisabled(), true, "what it would be added to is not there yet");
  await list.all();
  await tap("medicines-add");
  await at(hand, "medicines-remove-1").waitFor();
  const { medicines } = await call(hand, { request: "medicines" });
  assert.deepEqual(medicines.map(({ name }) => name), ["ergometrine", "arnica"]);
  assert.deepEqual(hand.problems, []);
});

test("who goes on in the examination before an answer is on disk stays where she went", { timeout: 60_000 }, async (t) => {
  const { hand, tap, exam, asked, items } = await examination(t);
  const answered = async () => (await exam()).items.filter((one) => one.answer !== null).map((one) => one.item);

  // To the list and from there to another item.
  const [{ item: first }] = items;
  let answer = await hand.hold("record");
  await tap("exam-could-not-tell");
  await tap("exam-list");
  await tap("exam-jump-maternal-surface");
  await answer.all();
  await until("it is on disk", async () => (await answered()).length === 1);
  await sleep(WHILE_MS);
  assert.equal(await asked(), "maternal-surface");

  // Past the next one, and an item that the answer brings comes in before it.
  const next = items[items.findIndex((one) => one.item === "insertion") + 1].item;
  await tap("exam-list");
  await tap("exam-jump-insertion");
  answer = await hand.hold("record");
  await tap("option-velamentous");
  await tap("exam-skip");
  assert.equal(await asked(), next);
  await answer.all();
  await until("it is on disk too", async () => (await answered()).length === 2);
  await sleep(WHILE_MS);
  assert.equal(await asked(), next, "no question changes under a finger");
  assert.deepEqual(await answered(), [first, "insertion"]);
  assert.ok((await exam()).items.some((one) => one.item === "insertion-edge"), "the answer brought one");
  assert.deepEqual(hand.problems, []);
});

test("of two marks on their way only the later is taken back, and a touch that comes again is kept beside its mark", { timeout: 60_000 }, async (t) => {
  const { hand, tap, look } = await begin(t);
  await tap("baby-born");
  await at(hand, "mark-cord_clamped").waitFor();
  await sleep(1_500);
  const { births } = await call(hand, { request: "births", skip: 0, take: 1 });
  const lines = async (kind) => (await call(hand, { request: "birth", birth: births[0].birth })).timeline.filter(({ fact }) => fact.kind === kind);
  const marks = await hand.hold("record");
  await tap("mark-cord_clamped");
  await tap("mark-cord_pulsation_stopped");
  await sleep(1_000);
  // Past the second in which a touch is a repeat: the button still says that it is being saved.
  await tap("mark-cord_clamped");
  await look("two-on-their-way");

  marks.next();
  await until("the earlier is on disk", async () => (await lines("cord_clamped")).length === 1);
  await sleep(WHILE_MS);
  assert.equal(await at(hand, "undo").count(), 0, "a touch would no longer mean the earlier one");
  await marks.all();
  await at(hand, "undo").waitFor();
  assert.match(await hand.textOf(".undo"), /pulsation/i);
  await tap("undo");
  await at(hand, "undo").waitFor({ state: "detached" });
  await until("the later is taken back", async () => (await lines("cord_pulsation_stopped"))[0]?.retracted);
  const [clamped, ...more] = await lines("cord_clamped");
  assert.deepEqual([clamped.retracted, clamped.again.length, more.length], [false, 1, 0], "one mark, and the touch that came again beside it");
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
  const set = await point();
  const writing = await hand.hold("record");
  await tap("sketch-keep");
  await touch(0.6, 0.5);
  await until("it is set anew", async () => (await point()).join() !== set.join());
  const later = await point();
  await writing.all();
  await until("the first place is on disk", recorded);
  await sleep(WHILE_MS);
  assert.deepEqual(await point(), later, "the later place stays in sight");
  const first = await recorded();
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
  const writing = await hand.hold("record");
  await sleep(700); // Four touches in half a second would be taken for water.
  await tap("save");
  await tap("sheet-close");
  await at(hand, "note-text").waitFor({ state: "detached" });

  // Another sheet is open when the answer comes: it stays, and what is typed in it.
  await tap("more");
  await tap("enter-noted");
  await hand.type('[data-test="note-text"]', "Kettle on");
  await writing.all();
  await at(hand, "not-saved").waitFor();
  assert.match(await hand.textOf('[data-test="not-saved"]'), /Note/);
  assert.equal(await at(hand, "note-text").inputValue(), "Kettle on");
  await look("not-saved");

  // After a refused write only another file takes anything, until the practice is opened anew.
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

test("a photograph that the disk refused is told after the screen was left, and kept at a second try", { timeout: 60_000 }, async (t) => {
  const { bridge, hand, tap, birth, look } = await examination(t);
  await tap("photographs");
  const picture = await photograph(hand, camera(0));
  const writing = await hand.hold("file_part");
  await at(hand, "photo-input").setInputFiles(picture);
  await tap("sheet-close");
  limitFiles(bridge, 4096);
  await writing.all();
  await at(hand, "not-saved").waitFor();
  assert.match(await hand.textOf('[data-test="not-saved"]'), /Photograph\s+The picture or sound could NOT be saved/);
  await look("photograph-not-saved");
  limitFiles(bridge, "unlimited");
  const again = await hand.hold("file_part");
  await tap("not-saved-again");
  await hand.page.locator("[data-test=not-saved-again]", { hasText: "Saving" }).waitFor();
  await again.all();
  await at(hand, "not-saved").waitFor({ state: "detached" });
  await until("it stands in the chart", async () => (await call(hand, { request: "birth", birth })).photos.length === 1);
  assert.deepEqual(hand.problems, []);
});
