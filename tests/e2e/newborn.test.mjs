// The baby in the page: every field of a look at it, and what a correction of one leaves of the others.

import assert from "node:assert/strict";
import { after, before, test } from "node:test";

import { createPractice } from "./birth.mjs";
import { emptyPhone, launch, picturesIn } from "./browser.mjs";
import { at, call, now } from "./core.mjs";

let browser;
before(async () => {
  browser = await launch();
});
after(() => browser.close());

const look = picturesIn("newborn");

/** A practice with one baby born; gives the hand, and what reads the birth. */
async function born(t) {
  const { hand } = await emptyPhone(t, browser);
  await createPractice(hand);
  await hand.tap('[data-test="baby-born"]');
  await hand.find('[data-test="mark-cord_clamped"]');
  const { births } = await call(hand, { request: "births", skip: 0, take: 1 });
  const view = () => call(hand, { request: "birth", birth: births[0].birth });
  return { hand, view, birth: births[0].birth };
}

const measured = (view) => view.timeline.filter((line) => line.fact.kind === "newborn_measured");

async function enter(hand, kind) {
  await hand.tap('[data-test="tab-stage"]');
  await hand.tap('[data-test="more"]');
  await hand.tap(`[data-test="enter-${kind}"]`);
}

async function save(hand) {
  await hand.tap('[data-test="save"]');
  await at(hand, "save").waitFor({ state: "detached" });
}

test("all that is seen of a baby is recorded, and stands when one of it is put right", { timeout: 120_000 }, async (t) => {
  const { hand, view } = await born(t);
  await enter(hand, "newborn_measured");
  for (const figure of "3480" + "505" + "350" + "367" + "142" + "44") await hand.tap(`[data-test="pad-${figure}"]`);
  await hand.tap('[data-test="sex-female"]');
  await hand.tap('[data-test="breathing-crying"]');
  await look(hand)("form");
  await save(hand);
  const all = { baby: 1, weight: 3480, length: 505, head: 350, temperature: 367, sex: "female", heart_rate: 142, respirations: 44, breathing: "crying" };
  assert.deepEqual(measured(await view()).map((line) => line.fact.data), [all]);

  await hand.tap('[data-test="tab-timeline"]');
  await hand.tap('[data-test="line"][data-kind="newborn_measured"] button');
  await hand.tap('[data-test="correct"]');
  await hand.type('[data-test="weight"]', "3840");
  await hand.type('[data-test="reason"]', "Two figures changed places");
  await save(hand);
  const [line] = measured(await view());
  assert.deepEqual(line.fact.data, { ...all, weight: 3840 }, "nothing but the weight is another");
  assert.equal(line.earlier.length, 1);

  // The next look has the last readings beside its fields, and takes a sign back that is touched again.
  await enter(hand, "newborn_measured");
  assert.match(await hand.textOf('[data-test="temperature-last"]'), /36\.7/);
  assert.match(await hand.textOf('[data-test="sex-last"]'), /Female/);
  await hand.tap('[data-test="breathing-grunting"]');
  await hand.tap('[data-test="breathing-grunting"]');
  await hand.tap('[data-test="breathing-regular"]');
  await save(hand);
  const { breathing, sex } = measured(await view()).at(-1).fact.data;
  assert.deepEqual([breathing, sex], ["regular", undefined]);
  assert.deepEqual(hand.problems, []);
});

test("a low score at five minutes offers two more times, and each score takes its reminder away", { timeout: 120_000 }, async (t) => {
  const { hand } = await born(t);
  const minutes = async () => hand.page.locator('[data-test^="apgar-minute-"]').evaluateAll((all) => all.map((one) => one.dataset.test.split("-").at(-1)));
  const score = async (minute, points, name) => {
    await enter(hand, "apgar_scored");
    await hand.tap(`[data-test="apgar-minute-${minute}"]`);
    for (const part of ["colour", "heart_rate", "reflex", "tone", "breathing"]) await hand.tap(`[data-test="apgar-${part}-${points}"]`);
    if (name) await look(hand)(name);
    await save(hand);
  };
  await hand.find('[data-test="due-apgar-1-1"]');
  await look(hand)("apgar-due");
  await score(1, 1);
  await at(hand, "due-apgar-1-1").first().waitFor({ state: "detached" });
  await enter(hand, "apgar_scored");
  assert.deepEqual(await minutes(), ["1", "5", "10"]);
  await hand.tap('[data-test="sheet-close"]');
  await score(5, 1, "apgar-form");
  for (const minute of [10, 15, 20]) await hand.find(`[data-test="due-apgar-1-${minute}"]`);
  await look(hand)("apgar-low");
  await enter(hand, "apgar_scored");
  assert.deepEqual(await minutes(), ["1", "5", "10", "15", "20"]);
  await look(hand)("apgar-form-after-low");
  assert.deepEqual(hand.problems, []);
});

test("the record tells the centiles with their source, or why there are none", { timeout: 120_000 }, async (t) => {
  const { hand, birth } = await born(t);
  const told = async () => {
    await hand.tap('[data-test="tab-record"]');
    return hand.textOf('[data-test="growth"]');
  };
  await enter(hand, "newborn_measured");
  await hand.type('[data-test="weight"]', "3384");
  await save(hand);
  assert.match(await told(), /No centile: the sex is not recorded\s+No centile: gestation is not recorded/);
  await look(hand)("record-no-centile");
  await call(hand, { request: "record", birth, fact: { kind: "client_recorded", data: { name: "Rosa", gestation: 280, gravida: null, para: null, born: null, blood_group: null, allergies: null } }, at: now });
  await enter(hand, "newborn_measured");
  await hand.tap('[data-test="sex-male"]');
  await hand.type('[data-test="length"]', "50,5");
  await hand.type('[data-test="head"]', "35");
  await save(hand);
  const text = await told();
  assert.match(text, /Among boys born at 40\+0 weeks\s+3384 g: centile 49\s+Length 50\.5 cm: centile \d+\s+Head 35 cm: centile \d+/);
  assert.match(text, /INTERGROWTH-21st.*\n?.*second hand/);
  assert.match(text, /Among boys born at term\s+3384 g: centile \d+/);
  await look(hand)("record-centiles");
  const shown = await hand.page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
  assert.equal(shown, 0);
  assert.deepEqual(hand.problems, []);
});

test("each of two babies is measured and watched by itself", { timeout: 120_000 }, async (t) => {
  const { hand, view, birth } = await born(t);
  await call(hand, { request: "record", birth, fact: { kind: "baby_born", data: { baby: 2 } }, at: now });
  await hand.tap('[data-test="tab-record"]');
  await hand.tap('[data-test="tab-stage"]');
  await hand.page.getByText("Temperature of baby 2: not recorded").waitFor();
  await enter(hand, "newborn_measured");
  await hand.tap('[data-test="newborn-baby-2"]');
  await hand.type('[data-test="temperature"]', "36.4");
  await save(hand);
  const about = (baby) => (found) => found.about.about === "newborn" && found.about.baby === baby && found.about.watch === "newborn-temperature";
  const { findings } = await view();
  assert.deepEqual([1, 2].map((baby) => findings.find(about(baby)).state), ["not_recorded", "near"]);
  await look(hand)("twins");
  assert.deepEqual(hand.problems, []);
});
