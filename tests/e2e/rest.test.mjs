// Nobody touches for a while: no name stays on the page, nor anywhere in the browser.

import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import { setTimeout as sleep } from "node:timers/promises";

import { PASSPHRASE, createPractice } from "./birth.mjs";
import { Phone, emptyPhone, launch, picturesIn } from "./browser.mjs";
import { at, call, note, now } from "./core.mjs";

let browser;
before(async () => {
  browser = await launch();
});
after(() => browser.close());

const looker = picturesIn("rest");

const MORE = Array.from({ length: 37 }, (_, n) => `Plover ${n} at Quernmore`);
const CANARIES = [
  "Zephyrine Quillfeather", "Marrowgate Cottage", "zinc-oxide-tape", "Blue door, brass knocker", "Aunt Philomela is here",
  "Her sister Ottoline drives", "Fenugreek in the tea", "Oxytocinum Korvelius", "Vastus lateralis sinister", "Tangerine towel",
  "Dog Balthasar barks", "Harbour Midwives", "Ida Lindqvist", ...MORE,
];

/** Everything that the page and the browser hold of it, as one text. */
function held() {
  const values = [...document.querySelectorAll("input, textarea")].map((one) => one.value);
  const kept = async () => {
    const bases = (await indexedDB.databases?.()) ?? [];
    const caches_ = "caches" in window ? await caches.keys() : [];
    return [...bases.map((base) => base.name), ...caches_];
  };
  return kept().then((names) => ({
    page: [document.documentElement.innerHTML, document.title, location.href, JSON.stringify(history.state)].join("\n"),
    stores: [JSON.stringify({ ...localStorage }), JSON.stringify({ ...sessionStorage }), document.cookie, names.join()].join("\n"),
    values: values.join("\n"),
    counts: names.length,
  }));
}

function holdsNone(text, where) {
  assert.deepEqual(CANARIES.filter((name) => text.includes(name)), [], where);
}

test("rest hides every name while a third stage runs, and locks when none does", { timeout: 120_000 }, async (t) => {
  const { bridge, hand: first } = await emptyPhone(t, browser);
  await first.page.context().close();
  const hand = await Phone.open(browser, bridge.address, { clock: true });
  const look = looker(hand);
  await createPractice(hand);

  // No third stage: after five minutes it locks.
  await hand.page.clock.fastForward(4 * 60_000 + 50_000);
  await sleep(300);
  assert.equal(await at(hand, "baby-born").count(), 1, "not before its time");
  await hand.page.clock.fastForward(15_000);
  await at(hand, "locked-baby-born").waitFor();
  holdsNone((await hand.page.evaluate(held)).page, "locked");
  await hand.type('[data-test="passphrase"]', PASSPHRASE);
  await hand.tap('[data-test="unlock"]');

  await hand.tap('[data-test="baby-born"]');
  await hand.find('[data-test="mark-cord_clamped"]');
  const { births } = await call(hand, { request: "births", skip: 0, take: 1 });
  const { birth } = births[0];
  const record = (kind, data) => call(hand, { request: "record", birth, fact: { kind, data }, at: now });
  const [mother, place, allergy, ...rest] = CANARIES;
  const answers = [
    await record("client_recorded", { name: mother, born: "1994-02-17", gravida: 2, para: 1, gestation: 281, blood_group: "O neg", allergies: allergy }),
    await record("noted", { text: place }),
    await record("medicine_given", { name: rest[4], dose: "10 IU", route: rest[5], uterotonic: true }),
    await record("blood_loss", { method: "weighed", item: rest[6], gross: 300, dry: 100 }),
  ];
  for (const text of [...MORE, rest[0], rest[1], rest[2], rest[3]]) answers.push(await note(hand, birth, text));
  assert.deepEqual(answers.filter((answer) => !answer.entry), [], "planted");
  await hand.tap('[data-test="tab-record"]');
  await hand.page.locator("main", { hasText: mother }).first().waitFor();
  await hand.tap('[data-test="tab-timeline"]');
  await hand.page.locator("[data-test=timeline]", { hasText: rest[3] }).waitFor();
  const seen = (await hand.page.evaluate(held)).page;
  assert.ok(CANARIES.filter((name) => seen.includes(name)).length >= 9, "they stood on the page");
  await hand.tap('[data-test="tab-stage"]');

  // A note is being typed when it rests.
  await hand.tap('[data-test="more"]');
  await hand.tap('[data-test="enter-noted"]');
  await hand.type('[data-test="note-text"]', rest[7]);
  await hand.page.clock.fastForward(5 * 60_000 + 3_000);
  await at(hand, "show-names").waitFor();
  await at(hand, "clock").waitFor();
  await sleep(500);
  const hidden = await hand.page.evaluate(held);
  holdsNone(hidden.page, "hidden: page");
  holdsNone(hidden.stores, "hidden: stores");
  assert.equal(hidden.counts, 0, "no database and no cache of the browser");
  holdsNone(await hand.text(), "hidden: to be read");
  assert.equal(await at(hand, "note-text").isVisible(), false);
  assert.equal(await at(hand, "tab-record").count(), 0, "what would be refused is not offered");
  await look("hidden");
  await hand.tap('[data-test="mark-cord_clamped"]');
  await hand.page.locator("[role=status]", { hasText: "Cord clamped" }).waitFor();

  await hand.tap('[data-test="show-names"]');
  await hand.type('[data-test="names-passphrase"]', PASSPHRASE);
  await hand.tap('[data-test="names-do"]');
  await hand.page.locator("[data-test=note-text]").waitFor();
  assert.equal(await at(hand, "note-text").inputValue(), rest[7], "what was being typed is kept");
  await hand.tap('[data-test="save"]');
  await at(hand, "note-text").waitFor({ state: "detached" });
  await hand.page.locator("[data-test=who]", { hasText: mother }).waitFor();

  // The third stage ends: now it locks, and nothing of the birth stays under the lock.
  await record("placenta_born", { babies: [1] });
  await hand.tap('[data-test="more"]');
  await hand.tap('[data-test="enter-noted"]');
  await hand.type('[data-test="note-text"]', rest[8]);
  await hand.page.clock.fastForward(5 * 60_000 + 3_000);
  await at(hand, "passphrase").or(at(hand, "locked-unlock")).first().waitFor();
  const locked = await hand.page.evaluate(held);
  holdsNone(locked.page + locked.stores + locked.values, "locked");
  assert.equal(await at(hand, "who").count(), 0);
  await look("locked");
  await hand.type('[data-test="passphrase"]', PASSPHRASE);
  await hand.tap('[data-test="unlock"]');
  await hand.page.locator("[data-test=who]", { hasText: mother }).waitFor();
  assert.deepEqual(hand.problems, []);
});

test("a rehearsal never rests", { timeout: 60_000 }, async (t) => {
  const { bridge, hand: first } = await emptyPhone(t, browser);
  await first.page.context().close();
  const hand = await Phone.open(browser, bridge.address, { clock: true });
  await createPractice(hand);
  await hand.tap('[data-test="menu"]');
  await hand.tap('[data-test="rehearse"]');
  await hand.tap('[data-test="rehearse-watch"]');
  await hand.tap('[data-test="rehearse-start"]');
  await at(hand, "strip").first().waitFor();
  const asked = [];
  hand.page.on("request", (request) => asked.push(request.postDataJSON()?.request));
  await hand.page.clock.fastForward(40 * 60_000);
  await sleep(1_500);
  assert.ok(asked.includes("status") && !asked.includes("rest"), asked.join());
  assert.ok((await at(hand, "strip").count()) > 0);
  assert.equal((await call(hand, { request: "status" })).door, "open");
});
