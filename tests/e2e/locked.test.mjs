// A birth on a locked phone: marked without the passphrase, in the chart after it.

import assert from "node:assert/strict";
import { mkdirSync, readdirSync, writeFileSync } from "node:fs";
import { join, resolve } from "node:path";
import { after, before, test } from "node:test";
import { setTimeout as sleep } from "node:timers/promises";

import { PASSPHRASE, createPractice, mark } from "./birth.mjs";
import { Phone, emptyPhone, launch, startBridge, until } from "./browser.mjs";

const out = resolve("out/locked");
mkdirSync(out, { recursive: true });

let browser;
before(async () => {
  browser = await launch();
});
after(() => browser.close());

async function begin(t, size) {
  const phone = await emptyPhone(t, browser, size);
  await createPractice(phone.hand);
  return phone;
}

async function lock(hand) {
  await hand.tap('[data-test="menu"]');
  await hand.tap('[data-test="lock"]');
  await hand.find('[data-test="unlock"], [data-test="locked-unlock"]');
  // Four touches in half a second are water on the glass.
  await sleep(600);
}

async function unlock(hand) {
  await hand.tap('[data-test="locked-unlock"]');
  await hand.type('[data-test="passphrase"]', PASSPHRASE);
  await hand.tap('[data-test="unlock"]');
  await hand.find('[data-test="births"]');
}

const look = async (hand, name) => {
  await sleep(250);
  writeFileSync(join(out, `${name}.png`), await hand.picture());
};

const seconds = async (hand, name) => {
  const [minutes, rest] = /(\d+):(\d\d)/.exec(await hand.textOf(`[data-test="${name}"]`)).slice(1).map(Number);
  return minutes * 60 + rest;
};

test("a birth is marked while locked and stands in the chart after unlocking", { timeout: 120_000 }, async (t) => {
  const { folder, hand } = await begin(t);
  await lock(hand);
  const button = await hand.page.locator('[data-test="locked-baby-born"]').boundingBox();
  assert.ok(button.height >= 160, `${button.height} px high`);
  const born = await mark(hand, '[data-test="locked-baby-born"]');
  await hand.find('[data-test="locked-stage"] [data-test="clock"]');
  await hand.find('[data-test="undo"]');
  await sleep(1_500);
  await mark(hand, '[data-test="mark-cord_clamped"]');
  await hand.page.locator("[role=status]", { hasText: "Cord clamped" }).waitFor();
  await hand.tap('[data-test="undo"]');
  await hand.page.locator("[data-test=locked-marks]", { hasText: "Cord clamped: taken back" }).waitFor();
  await sleep(1_500);
  const placenta = await mark(hand, '[data-test="mark-placenta_born"]');
  await hand.page.locator("[role=status]", { hasText: "Placenta born" }).waitFor();
  await look(hand, "stage");
  assert.equal(readdirSync(`${folder}/practice/inbox`).filter((name) => name.endsWith(".inbox")).length, 1);

  // A wrong passphrase takes nothing away.
  await hand.tap('[data-test="locked-unlock"]');
  await hand.type('[data-test="passphrase"]', "something else");
  await hand.tap('[data-test="unlock"]');
  await hand.find('[data-test="unlock-error"]');
  await hand.tap('[data-test="locked-back"]');
  const shown = await seconds(hand, "clock");
  const [least, most] = [(placenta.from - born.to) / 1000, (placenta.to - born.from) / 1000];
  assert.ok(shown >= least - 1 && shown <= most, `${shown} s shown, ${least} to ${most} s passed`);

  await unlock(hand);
  await hand.page.locator("[data-test=drained]", { hasText: "entries were brought in" }).waitFor();
  await look(hand, "drained");
  await hand.tap('[data-test="drained-done"]');
  await hand.page.locator("[data-test=drained]").waitFor({ state: "detached" });
  await hand.tap('[data-test="birth"]');
  assert.equal(await seconds(hand, "clock"), shown, "the chart has what the locked clock showed");
  await hand.tap('[data-test="tab-timeline"]');
  await hand.page.locator("[data-test=timeline] s", { hasText: "Cord clamped" }).first().waitFor();
  await hand.page.locator("[data-test=timeline]", { hasText: "Placenta born" }).waitFor();
  assert.equal(readdirSync(`${folder}/practice/inbox`).filter((name) => name.endsWith(".inbox")).length, 0);
  // The wrong passphrase was answered with 422, which the phone's console keeps out of its problems.
  assert.deepEqual(hand.problems, []);
});

test("a third stage that runs goes on without a name, through a kill", { timeout: 120_000 }, async (t) => {
  const { folder, bridge, hand } = await begin(t);
  const born = await mark(hand, '[data-test="baby-born"]');
  await hand.find('[data-test="mark-cord_clamped"]');
  await hand.tap('[data-test="back"]');
  await lock(hand);
  await hand.find('[data-test="locked-stage"]');
  const text = await hand.text();
  for (const name of ["Harbour", "Ida", "Lindqvist", new Date().getFullYear().toString()]) assert.ok(!text.includes(name), `${name} stands in: ${text}`);
  const passed = () => (performance.now() - born.from) / 1000;
  assert.ok(Math.abs((await seconds(hand, "clock")) - passed()) <= 2);
  await bridge.stop("SIGKILL");

  const again = await startBridge(folder);
  t.after(() => again.stop());
  const back = await Phone.open(browser, again.address);
  await back.find('[data-test="locked-baby-born"]');
  await back.tap('[data-test="passphrase-show"]');
  await back.type('[data-test="passphrase"]', PASSPHRASE);
  await back.tap('[data-test="unlock"]');
  await back.tap('[data-test="birth"]');
  assert.ok(Math.abs((await seconds(back, "clock")) - passed()) <= 2);
});

test("the locked screens fit a small phone in every light", { timeout: 180_000 }, async (t) => {
  const { folder, bridge, hand } = await begin(t, { width: 320, height: 568 });
  await lock(hand);
  const fits = async (name) => {
    for (const theme of ["day", "night", "red"]) {
      await hand.run(`document.documentElement.dataset.theme = "${theme}"`);
      await look(hand, `${name}-${theme}`);
    }
    const { over, ids, boxes } = await hand.page.evaluate(() => ({
      over: document.documentElement.scrollWidth - document.documentElement.clientWidth,
      ids: document.body.innerText.match(/\b(ui|fact|error)-[a-z-]+\b/g),
      boxes: [...document.querySelectorAll("[data-primary]")].map((one) => one.getBoundingClientRect().toJSON()),
    }));
    assert.equal(over, 0, `${name} is wider than the screen by ${over} px`);
    assert.equal(ids, null, `${name} shows ids of messages`);
    assert.ok(boxes.length >= 1, name);
    for (const box of boxes) assert.ok(box.left >= 16 && 320 - box.right >= 16 && box.height >= 128, `${name}: ${JSON.stringify(box)}`);
    // The likeliest mark is whole on the first screen.
    assert.ok(boxes[0].bottom <= 568, `${name}: ends at ${boxes[0].bottom}`);
  };
  await fits("born");
  await hand.tap('[data-test="locked-baby-born"]');
  await hand.find('[data-test="undo"]');
  await fits("undo");
  await hand.page.locator("[data-test=undo]").waitFor({ state: "detached" });
  await fits("timing");
  await hand.tap('[data-test="locked-others"]');
  await look(hand, "others");
  await hand.tap('[data-test="locked-other-moment"]');
  await hand.page.locator("[data-test=locked-marks]", { hasText: "Moment" }).waitFor();
  // Begun again after a kill: what waits is told, and marks can be made at once.
  await bridge.stop("SIGKILL");
  const again = await startBridge(folder);
  t.after(() => again.stop());
  const back = await Phone.open(browser, again.address, { width: 320, height: 568 });
  await back.find('[data-test="locked-waiting"]');
  await back.tap('[data-test="locked-others"]');
  await back.tap('[data-test="locked-other-placenta_born"]');
  await back.find('[data-test="locked-stage"]');
  await look(back, "after-kill");
  await unlock(back);
  await until("one birth", async () => (await back.page.locator('[data-test="birth"]').count()) === 1);
});
