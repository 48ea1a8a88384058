// The same birth in Chromium at the size of a small phone, with touch; and what the page must keep to there.

import assert from "node:assert/strict";
import { mkdirSync, writeFileSync } from "node:fs";
import { join, resolve } from "node:path";
import { after, before, test } from "node:test";
import { setTimeout as sleep } from "node:timers/promises";

import { PASSPHRASE, checkRecord, createPractice, examine, thirdStage, writeRecord } from "./birth.mjs";
import { Phone, emptyPhone, launch, startBridge } from "./browser.mjs";

const out = resolve("out/browser");
mkdirSync(out, { recursive: true });

let browser;
before(async () => {
  browser = await launch();
});
after(() => browser.close());

const begin = (t, size) => emptyPhone(t, browser, size);

const looker = (hand) => async (name) => {
  await sleep(250);
  writeFileSync(join(out, `${name}.png`), await hand.picture());
};

test("a birth from the first touch to the printed record", { timeout: 180_000 }, async (t) => {
  const { hand } = await begin(t);
  const look = looker(hand);
  await createPractice(hand, look);
  const moments = await thirdStage(hand, look);
  const exam = await examine(hand, look);
  const durations = checkRecord(await writeRecord(hand, look), moments);
  assert.deepEqual(hand.problems, []);
  t.diagnostic(`examination: ${exam.taps} taps, ${exam.took} ms; ${JSON.stringify(durations)}`);
});

test("no words are missing and nothing hangs over the edge", { timeout: 180_000 }, async (t) => {
  const { hand } = await begin(t, { width: 320, height: 568 });
  const seen = [];
  const look = async (name) => {
    const { text, over, bare } = await hand.page.evaluate(() => ({
      text: document.body.innerText,
      over: document.documentElement.scrollWidth - document.documentElement.clientWidth,
      bare: [...document.querySelectorAll("button, a, input")].filter((one) => {
        const named = one.innerText || one.getAttribute("aria-label") || one.labels?.length || one.title;
        return one.getClientRects().length > 0 && !named;
      }).length,
    }));
    seen.push(name);
    assert.equal(over, 0, `${name} is wider than the screen by ${over} px`);
    assert.equal(bare, 0, `${name} has a control without a name`);
    const ids = text.match(/\b(ui|fact|exam|finding|error|impossible|odd|due|watch|status)-[a-z-]+\b/g);
    assert.equal(ids, null, `${name} shows ids of messages`);
  };
  await createPractice(hand, look);
  await thirdStage(hand, look);
  await examine(hand, look);
  await writeRecord(hand, look);
  assert.ok(seen.length >= 11);
});

test("the large marks keep their size and distance", { timeout: 120_000 }, async (t) => {
  for (const [width, height] of [[320, 568], [360, 800], [411, 891]]) {
    const { hand } = await begin(t, { width, height });
    await createPractice(hand);
    await hand.tap('[data-test="baby-born"]');
    await hand.find('[data-test="mark-cord_clamped"]');
    const boxes = await hand.page.evaluate(() =>
      [...document.querySelectorAll("[data-primary]")].map((one) => one.getBoundingClientRect().toJSON()));
    assert.ok(boxes.length >= 2 && boxes.length <= 4, `${boxes.length} marks`);
    boxes.sort((a, b) => a.top - b.top);
    for (const [place, box] of boxes.entries()) {
      assert.ok(box.height >= 128, `${width}: ${box.height} px high`);
      assert.ok(box.left >= 16 && width - box.right >= 16, `${width}: ${box.left} px from the edge`);
      if (place > 0) assert.ok(box.top - boxes[place - 1].bottom >= 24, `${width}: gap of ${box.top - boxes[place - 1].bottom} px`);
    }
  }
});

test("undo takes a mark back, and both stay in the timeline", { timeout: 120_000 }, async (t) => {
  const { hand } = await begin(t);
  await createPractice(hand);
  await hand.tap('[data-test="baby-born"]');
  await hand.tap('[data-test="mark-cord_clamped"]');
  await hand.page.locator("[role=status]", { hasText: "Cord clamped" }).waitFor();
  await sleep(700); // Four touches in half a second would be taken for water.
  await hand.tap('[data-test="undo"]');
  await hand.page.locator("[role=status]", { hasText: "Cord clamped" }).waitFor({ state: "detached" });
  await hand.tap('[data-test="tab-timeline"]');
  await hand.find('[data-test="timeline"]');
  await hand.page.locator("[data-test=timeline] s", { hasText: "Cord clamped" }).first().waitFor();
});

test("the bridge answers this page only", { timeout: 30_000 }, async (t) => {
  const { bridge } = await begin(t);
  const { origin, hash } = new URL(bridge.address);
  const bearer = hash.slice("#token=".length);
  const call = (headers) => fetch(`${origin}/call`, { method: "POST", headers, body: '{"request":"status"}' }).then((answer) => answer.status);
  assert.equal(await call({ Authorization: `Bearer ${bearer}` }), 200);
  assert.equal(await call({}), 401);
  assert.equal(await call({ Authorization: "Bearer 00" }), 401);
  assert.equal(await call({ Authorization: `Bearer ${bearer}`, Origin: "http://example.org" }), 403);
});

test("the process is killed in the third stage and the clocks run on", { timeout: 60_000 }, async (t) => {
  const { folder, bridge, hand } = await begin(t);
  await createPractice(hand);
  const touched = performance.now();
  await hand.tap('[data-test="baby-born"]');
  await hand.find('[data-test="mark-cord_clamped"]');
  await bridge.stop("SIGKILL");
  const again = await startBridge(folder);
  t.after(() => again.stop());
  const back = await Phone.open(browser, again.address);
  await back.type('[data-test="passphrase"]', PASSPHRASE);
  await back.tap('[data-test="unlock"]');
  await back.tap('[data-test="birth"]');
  const [minutes, seconds] = /(\d+):(\d\d)/.exec(await back.textOf('[data-test="clock"]')).slice(1).map(Number);
  const passed = (performance.now() - touched) / 1000;
  assert.ok(Math.abs(minutes * 60 + seconds - passed) <= 2, `${minutes}:${seconds} after ${passed} s`);
});
