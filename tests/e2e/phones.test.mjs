// Two phones at one birth: joined by the camera, both record, and the charts merge.

import assert from "node:assert/strict";
import { after, before, test } from "node:test";

import { createPractice, mark } from "./birth.mjs";
import { emptyPhone, launch, picturesIn } from "./browser.mjs";
import { at, call } from "./core.mjs";
import { another, give, photographed } from "./phones.mjs";

const pictures = picturesIn("phones");
let browser;
before(async () => {
  browser = await launch();
});
after(() => browser.close());

const of = async (hand, birth) => call(hand, { request: "birth", birth });
const marks = ({ timeline }) => timeline.filter(({ fact }) => /_(born|clamped|cut)$/.test(fact.kind)).map(({ fact }) => fact.kind);

test("a second phone joins by a picture of the first one's screen, both mark, and both have one chart", async (t) => {
  const { hand: first } = await emptyPhone(t, browser);
  await createPractice(first);
  const { second, end } = await another(browser, first);
  t.after(end);
  const [seenFirst, seenSecond] = [pictures(first), pictures(second)];

  await mark(first, '[data-test="baby-born"]');
  await first.find('[data-test="mark-cord_clamped"]');
  await first.tap('[data-test="more"]');
  await first.tap('[data-test="more-phones"]');
  await first.find('[data-test="qr"]');
  await seenFirst("code");

  await second.tap('[data-test="join-birth"]');
  await second.find('[data-test="code-input"]');
  await seenSecond("join");
  await photographed(first, second);
  await second.find('[data-test="found"]');
  await seenSecond("found");
  await second.tap('[data-test="join"]');
  await second.find('[data-test="join-open"]');
  await seenSecond("answer");
  await photographed(second, first);
  await first.find('[data-test="compared"]');
  await seenFirst("compared");
  const { births } = await call(first, { request: "births", skip: 0, take: 1 });
  const { birth } = births[0];
  const compared = (await of(first, birth)).timeline.find(({ fact }) => fact.kind === "clocks_compared").fact.data;
  assert.ok(Math.abs(compared.ahead_ms) <= compared.error_ms, `one clock: ${JSON.stringify(compared)}`);

  await second.tap('[data-test="join-open"]');
  await second.find('[data-test="awaits"]');
  assert.match(await second.textOf('[data-test="awaits"]'), /next sync/);
  await seenSecond("partial");
  // The clock runs there from the birth that the first phone told of, and the cord is marked there.
  const [one, other] = [await of(first, birth), await of(second, birth)];
  assert.ok(Math.abs(one.third_stage.elapsed_ms - other.third_stage.elapsed_ms) < 25_000);
  await mark(second, '[data-test="mark-cord_clamped"]');
  await second.find('[data-test="mark-cord_cut"]');
  await first.tap('[data-test="sheet-close"]');
  await mark(first, '[data-test="mark-placenta_born"]');
  await first.find('[data-test="mark-membranes_born"]');
  await second.find('[data-test="undo"]');

  await give(second, first);
  await give(first, second);
  const merged = [await of(first, birth), await of(second, birth)];
  assert.deepEqual(merged.map(marks), Array(2).fill(["baby_born", "cord_clamped", "placenta_born"]));
  assert.equal(merged[0].version, merged[1].version);
  assert.deepEqual(merged.map((view) => view.phones.awaits), [null, null]);
  assert.deepEqual(merged[0].timeline.map(({ since_birth }) => since_birth), merged[1].timeline.map(({ since_birth }) => since_birth));
  await second.page.reload();
  await second.tap('[data-test="tab-timeline"]');
  await second.page.locator('[data-test="line"][data-kind="placenta_born"]').waitFor();
  await seenSecond("merged");
  assert.deepEqual([...first.problems, ...second.problems], []);
  assert.ok(await at(second, "line").count());
});
