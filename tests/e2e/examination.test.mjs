// The examination in the page: what follows from an answer, cords of twins, an order of one's own, one page for charting.

import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import { setTimeout as sleep } from "node:timers/promises";

import { createPractice, examine } from "./birth.mjs";
import { emptyPhone, launch, picturesIn } from "./browser.mjs";
import { at, call, now } from "./core.mjs";

let browser;
before(async () => {
  browser = await launch();
});
after(() => browser.close());

const look = picturesIn("examination");
/** The page looks at the birth anew every 5 s. */
const PAST_A_LOOK_MS = 5_500;

const record = (hand, birth, kind, data) => call(hand, { request: "record", birth, fact: { kind, data }, at: now });

/** A birth with so many babies, whose placenta is born, and one disc for all of them; its page is open at the examination. */
async function placenta(hand, babies = [1]) {
  const { birth } = await call(hand, { request: "register_birth", label: "Harbour" });
  for (const baby of babies) await record(hand, birth, "baby_born", { baby });
  await record(hand, birth, "placenta_born", { babies });
  return birth;
}

/** The latest birth, at its examination. */
async function open(hand) {
  await hand.anew();
  await hand.tap('[data-test="birth"]');
  await hand.tap('[data-test="tab-exam"]');
}

async function begin(t, babies) {
  const { hand } = await emptyPhone(t, browser);
  await createPractice(hand);
  const birth = await placenta(hand, babies);
  await open(hand);
  return { hand, birth, view: async () => (await call(hand, { request: "birth", birth })).examinations[0] };
}

/** Answers the item on the screen by these touches, once it is the expected one. */
async function give(hand, item, touches, cord) {
  const where = `[data-test="exam-question"][data-item="${item}"]${cord ? `[data-cord="${cord}"]` : ""}`;
  await hand.find(where);
  for (const name of touches) await hand.tap(`[data-test="${name}"]`);
}

async function themes(hand, name) {
  for (const theme of ["day", "night", "red"]) {
    await hand.page.evaluate((name) => document.documentElement.setAttribute("data-theme", name), theme);
    await look(hand)(`${name}-${theme}`);
  }
  await hand.page.evaluate(() => document.documentElement.setAttribute("data-theme", "day"));
}

test("a usual examination takes little more than thirty touches, and one by one its figures are there", { timeout: 180_000 }, async (t) => {
  const { hand, view } = await begin(t);
  const { taps, took } = await examine(hand, async () => {});
  t.diagnostic(`${taps} touches, ${took} ms`);
  assert.ok(taps <= 36 && took < 90_000, `${taps} touches, ${took} ms`);
  const exam = await view();
  assert.equal(exam.answered, exam.items.length);
  assert.deepEqual(exam.reasons, []);
  const figures = Object.fromEntries(exam.figures.map((one) => [one.figure, one.value]));
  assert.deepEqual(figures["coiling-index"].args.value.args, { whole: "0", places: "22" });
  assert.equal(figures["disc-area"].args.value, 283, "π/4 × 20 × 18 = 282.7");
  await hand.tap('[data-test="figure-coiling-index"]');
  const told = await hand.textOf('[data-test="figure-told"]');
  for (const words of ["Whole turns", "12", "55 cm", "Strong 1994", "de Laat 2006", "unverified"]) assert.ok(told.includes(words), `${words}: ${told}`);
  await themes(hand, "list");
});

test("what follows from an answer is asked at once, and what is unusual is told with its source", { timeout: 180_000 }, async (t) => {
  const { hand, view } = await begin(t);
  await give(hand, "ready", ["pick-gloves", "pick-light", "exam-keep"]);
  await give(hand, "fetal-surface", ["option-green-stays"]);
  await give(hand, "fetal-marks", ["pick-bumps", "pick-cyst"]);
  await themes(hand, "several");
  await sleep(PAST_A_LOOK_MS);
  assert.equal(await hand.page.locator('[aria-checked="true"]').count(), 2, "what is not recorded yet stays when the birth is looked at again");
  await hand.tap('[data-test="exam-keep"]');
  await give(hand, "fetal-vessels", ["exam-could-not-tell"]);
  await give(hand, "insertion", ["option-velamentous"]);
  await give(hand, "insertion-edge", ["quick-30"]);
  await give(hand, "amnion", ["option-ragged"]);
  await give(hand, "chorion", ["option-whole"]);
  await give(hand, "tear-edge", ["exam-skip"]);
  await give(hand, "edge-vessels", ["option-none"]);
  await give(hand, "cord-length", ["quick-200"]);
  await hand.find('[data-test="exam-pieces"]');
  await give(hand, "cord-length", ["exam-other-value", "pad-8", "pad-point", "pad-5", "exam-keep"]);
  await look(hand)("pieces");
  await sleep(PAST_A_LOOK_MS);
  assert.match(await hand.textOf('[data-test="exam-pieces"]'), /20\.0 \+ 8\.5 cm/);
  await hand.tap('[data-test="exam-piece-missing"]');
  await give(hand, "cord-thickness", ["exam-other-value", "pad-9", "pad-9"]);
  await hand.find('[data-test="exam-outside"]');
  assert.ok(await at(hand, "exam-keep").isDisabled(), "99 cm is no thickness of a cord");
  await hand.tap('[data-test="exam-skip"]');
  await give(hand, "cord-coils", ["exam-skip"]);
  await give(hand, "cord-jelly", ["exam-skip"]);
  await give(hand, "cord-marks", ["option-none"]);
  await give(hand, "knots", ["option-true-tight"]);
  await give(hand, "vessels", ["option-two"]);
  await give(hand, "maternal-clot", ["option-adherent"]);
  await give(hand, "clot-weight", ["pad-6", "pad-0", "exam-keep"]);
  await give(hand, "clot-share", ["quick-20"]);
  await give(hand, "lobes", ["option-meet"]);
  await give(hand, "maternal-surface", ["pick-gritty", "pick-firm-areas", "exam-keep"]);
  await give(hand, "calcium", ["option-few"]);
  await give(hand, "firm-where", ["option-several"]);
  await give(hand, "firm-size", ["quick-35"]);
  await give(hand, "firm-share", ["quick-10"]);
  await give(hand, "shape", ["option-extra-lobe"]);
  await give(hand, "extra-lobe-size", ["quick-50"]);
  await give(hand, "extra-lobe-gap", ["quick-20"]);
  await give(hand, "rim", ["option-folded"]);
  await give(hand, "rim-share", ["quick-50"]);
  await hand.tap('[data-test="exam-list"]');
  await hand.find('[data-test="notice-limit"]');
  await themes(hand, "unusual");
  await hand.tap('[data-test="exam-reasons-fold"]');
  await themes(hand, "reasons");
  const exam = await view();
  const told = exam.reasons.map((one) => one.reason);
  for (const reason of ["any", "bumps", "clot-behind", "colour", "knot", "artery", "insertion", "tell-artery", "ask-amnion"]) {
    assert.ok(told.includes(reason), `${reason}: ${told}`);
    await hand.find(`[data-test="reason-${reason}"]`);
  }
  assert.ok(!told.includes("short-cord"), "28.5 cm with a piece missing is not called short");
  assert.deepEqual(exam.figures.find((one) => one.figure === "cord-length").passed, []);
  // The answer is put right, and what followed from it goes, but not what was recorded.
  await hand.tap('[data-test="exam-jump-maternal-clot"]');
  await hand.tap('[data-test="option-none"]');
  const after = (await view()).items.map((one) => one.item);
  assert.ok(after.includes("clot-share") && !after.includes("clot-place"));
});

test("each cord of a fused disc is asked by its clamps, and the chorions appear", { timeout: 180_000 }, async (t) => {
  const { hand, view } = await begin(t, [1, 2]);
  await hand.tap('[data-test="exam-list"]');
  await hand.tap('[data-test="exam-jump-dividing-look"]');
  await give(hand, "dividing-look", ["option-thin"]);
  await give(hand, "dividing-layers", ["option-two"]);
  await give(hand, "crossing-vessels", ["option-cross"]);
  await give(hand, "cord-length", ["quick-400", "exam-all-pieces"], 1);
  await hand.find('[data-test="exam-question"][data-item="cord-thickness"]');
  for (let n = 0; n < 6; n += 1) {
    await hand.find('[data-test="exam-question"][data-cord="1"]');
    await hand.tap('[data-test="exam-skip"]');
  }
  await hand.find('[data-test="exam-question"][data-item="cord-length"][data-cord="2"]');
  await themes(hand, "second-cord");
  await give(hand, "cord-length", ["quick-300", "exam-all-pieces"], 2);
  const exam = await view();
  const lengths = exam.items.filter((one) => one.item === "cord-length").map((one) => [one.cord, one.answer.lengths]);
  assert.deepEqual(lengths, [[1, [400]], [2, [300]]]);
  assert.equal(exam.figures.find((one) => one.figure === "chorionicity").value.id, "figure-appears-monochorionic");
});

test("an order of one's own is kept for the next birth, and left again", { timeout: 180_000 }, async (t) => {
  const { hand, birth, view } = await begin(t);
  const usual = (await view()).items;
  const answer = (one) => {
    if (one.kind === "choice") return { answer: "choice", option: one.options[0].option };
    if (one.kind === "choices") return { answer: "choices", options: [one.none ?? one.options[0].option] };
    if (one.kind === "pieces") return { answer: "pieces", lengths: [500], all: true };
    if (one.kind === "coils") return { answer: "coils", coils: 10, over: 500 };
    return { answer: "measure", value: Math.max(one.min, 20) };
  };
  const membranes = usual.filter((one) => one.part === "membranes");
  for (const one of [...membranes, ...usual.filter((one) => one.part !== "membranes")]) {
    await record(hand, birth, "examined", { placenta: 1, item: one.item, answer: answer(one) });
  }
  await open(hand);
  await hand.tap('[data-test="exam-keep-order"]');
  await hand.find('[data-test="exam-usual-order"]');
  const next = await placenta(hand);
  const first = async () => (await call(hand, { request: "birth", birth: next })).examinations[0].items[0].item;
  assert.equal(await first(), "amnion");
  await hand.tap('[data-test="exam-usual-order"]');
  await at(hand, "exam-usual-order").waitFor({ state: "detached" });
  assert.equal(await first(), "ready");
});

test("on one page answers are given and put right, with what stood there kept", { timeout: 180_000 }, async (t) => {
  const { hand, birth, view } = await begin(t);
  await hand.tap('[data-test="exam-list"]');
  await hand.tap('[data-test="exam-page"]');
  await hand.tap('[data-test="page-shape"] [data-test="option-two-lobes"]');
  await hand.page.locator('[data-test="page-shape"] legend b').waitFor();
  await hand.tap('[data-test="page-shape"] [data-test="option-round"]');
  await hand.page.locator('[data-test="page-shape"] legend b', { hasText: "round" }).waitFor();
  await look(hand)("page");
  assert.equal((await view()).items.find((one) => one.item === "shape").answer.option, "round");
  const { timeline } = await call(hand, { request: "birth", birth });
  const line = timeline.find((one) => one.fact.kind === "examined");
  assert.equal(line.earlier.length, 1, "what stood there before is kept");
});

test("a table of weights is taken with its source, or refused with the line that is wrong", { timeout: 180_000 }, async (t) => {
  const { hand } = await begin(t);
  await hand.anew();
  await hand.tap('[data-test="menu"]');
  await hand.tap('[data-test="practice"]');
  await hand.tap('[data-test="weights"]');
  await hand.find('[data-test="weights-now"]');
  const load = (text) => at(hand, "weights-load").setInputFiles({ name: "table.csv", mimeType: "text/csv", buffer: Buffer.from(text) });
  // Invented numbers, of no cohort.
  const table = "# source: A made-up cohort\n# weighed: untrimmed\nweek,p10,p50,p90\n39,400,500,600\n40,410,510,610\n";
  await load(table.replace("410", "900"));
  await hand.find('[data-test="weights-error"]');
  assert.match(await hand.textOf('[data-test="weights-error"]'), /Line 5.*Nothing was changed/);
  await load(table);
  await hand.find('[data-test="weights-remove"]');
  assert.match(await hand.textOf('[data-test="weights-now"]'), /A made-up cohort/);
  await look(hand)("weights");
  const birth = await placenta(hand);
  await record(hand, birth, "client_recorded", { name: "B", born: null, gestation: 283, gravida: null, para: null, blood_group: null, allergies: null });
  await record(hand, birth, "examined", { placenta: 1, item: "weight", answer: { answer: "measure", value: 450 } });
  await record(hand, birth, "examined", { placenta: 1, item: "weighed-as", answer: { answer: "choice", option: "untrimmed" } });
  const { figures } = (await call(hand, { request: "birth", birth })).examinations[0];
  const stands = figures.find((one) => one.figure === "weight-table");
  assert.deepEqual([stands.value.id, stands.value.args, stands.published[0].source], ["figure-centile-between", { below: 10, above: 50 }, "A made-up cohort"]);
});
