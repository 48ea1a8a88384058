// Photographs of the placenta in the page: taken, seen, taken out; and measured on, where that was switched on.

import assert from "node:assert/strict";
import { mkdirSync, readdirSync, readFileSync } from "node:fs";
import { join, resolve } from "node:path";
import { after, before, test } from "node:test";
import { setTimeout as sleep } from "node:timers/promises";

import { createPractice, writeFile } from "./birth.mjs";
import { emptyPhone, launch } from "./browser.mjs";
import { at, call } from "./core.mjs";
import { CARDS, DISC, HEIGHT, WIDTH, camera, photograph, touch } from "./photograph.mjs";

let browser;
before(async () => {
  browser = await launch();
});
after(() => browser.close());

const out = resolve("out/photo");
mkdirSync(out, { recursive: true });

/** Leaves a picture of the screen. */
const look = (hand) => async (name) => {
  await sleep(250);
  await hand.page.screenshot({ path: join(out, `${name}.png`) });
};
/** A practice with a placenta born; gives the hand, and what reads the birth. */
async function placenta(t) {
  const { hand, folder } = await emptyPhone(t, browser);
  await createPractice(hand);
  for (const name of ["baby-born", "mark-cord_clamped", "mark-placenta_born"]) {
    await hand.find(`[data-test="${name}"]`);
    await hand.tap(`[data-test="${name}"]`);
  }
  await hand.find('[data-test="mark-membranes_born"]');
  const { births } = await call(hand, { request: "births", skip: 0, take: 1 });
  const view = () => call(hand, { request: "birth", birth: births[0].birth });
  await hand.tap('[data-test="tab-exam"]');
  return { hand, view, folder };
}

async function take(hand, file) {
  await at(hand, "photo-input").setInputFiles(file);
  await hand.page.locator('[data-test="photo"] img').first().waitFor();
}

async function measuringOn(hand) {
  await hand.tap('[data-test="tab-stage"]');
  await hand.tap('[data-test="more"]');
  await hand.tap('[data-test="menu"]');
  await hand.tap('[data-test="device"]');
  await hand.tap('[data-test="measuring-on"]');
  await look(hand)("switch");
  await hand.tap('[data-test="sheet-close"] >> nth=-1');
  await hand.page.locator('[data-test="sheet-close"]').nth(1).waitFor({ state: "detached" });
  await hand.tap('[data-test="sheet-close"]');
  await hand.tap('[data-test="tab-exam"]');
}

/** Places everything on the photograph that is open; with pictures under this name. */
async function measure(hand, seen, name) {
  await hand.tap('[data-test="photo-measure-begin"]');
  await hand.tap('[data-test="reference-two_cards"]');
  await look(hand)(`${name}-reference`);
  await hand.tap('[data-test="step-next"]');
  await hand.find('[data-test="photo-stage"] img');
  const corners = CARDS.flat().map(seen);
  for (const [n, corner] of corners.entries()) {
    await (await touch(hand, corner))(n === 5 ? join(out, `${name}-loupe.png`) : null);
    if (n < 7) await hand.tap('[data-test="point-next"]');
  }
  await look(hand)(`${name}-corners`);
  await hand.tap('[data-test="step-next"]');
  const disc = DISC.map(seen);
  await (await touch(hand, disc[0], disc.slice(1)))(join(out, `${name}-drawing.png`));
  await hand.find('[data-test="outline-again"]');
  await look(hand)(`${name}-outline`);
  await hand.tap('[data-test="step-next"]');
  await (await touch(hand, seen([40, 10])))(null);
  await look(hand)(`${name}-insertion`);
  await hand.tap('[data-test="step-next"]');
  await hand.type('[data-test="photo-thickness"]', "0.1");
  await hand.page.keyboard.press("Tab");
  await look(hand)(`${name}-thickness`);
  await hand.tap('[data-test="step-next"]');
}

test("a photograph is taken, kept sealed, seen large and taken out", { timeout: 180_000 }, async (t) => {
  const { hand, view, folder } = await placenta(t);
  await hand.tap('[data-test="photographs"]');
  await hand.find('[data-test="photos-none"]');
  await at(hand, "photo-input").setInputFiles({ name: "a.jpg", mimeType: "image/jpeg", buffer: Buffer.from("GIF89a") });
  await hand.find('[data-test="photo-error"]');
  assert.match(await hand.textOf('[data-test="photo-error"]'), /no picture in JPEG or PNG/);
  await take(hand, await photograph(hand, camera(0)));
  await look(hand)("list");
  const [shown] = (await view()).photos;
  assert.deepEqual([shown.photo.width, shown.photo.height, shown.photo.item], [WIDTH, HEIGHT, "ready"]);
  const files = readdirSync(join(folder, "practice/files")).map((name) => readFileSync(join(folder, "practice/files", name)));
  assert.equal(files.length, 2);
  for (const bytes of files) assert.ok(bytes.subarray(0, 21).toString() === "age-encryption.org/v1" && !bytes.includes("JFIF"));

  await hand.tap('[data-test="photo"]');
  await hand.find('[data-test="photo-large"] img');
  const natural = await hand.page.locator('[data-test="photo-large"] img').evaluate((image) => [image.naturalWidth, image.naturalHeight]);
  assert.deepEqual(natural, [WIDTH, HEIGHT]);
  await look(hand)("large");
  assert.equal(await at(hand, "photo-measure-begin").count(), 0, "measuring is off until somebody switches it on");
  await hand.type('[data-test="take-out-reason"]', "Out of focus");
  const hold = await at(hand, "take-out").boundingBox();
  await hand.page.mouse.move(hold.x + hold.width / 2, hold.y + hold.height / 2);
  await hand.page.mouse.down();
  await hand.find('[data-test="photos-none"]');
  await hand.page.mouse.up();
  const after = await view();
  assert.equal(after.photos.length, 0);
  assert.ok(after.timeline.find((line) => line.fact.kind === "photo_taken").retracted, "it stays readable as taken out");
  assert.deepEqual(hand.problems, []);
});

test("a disc is measured on a photograph, and its length taken over by a touch", { timeout: 180_000 }, async (t) => {
  const { hand, view } = await placenta(t);
  await measuringOn(hand);
  await hand.tap('[data-test="photographs"]');
  const seen = camera(8);
  await take(hand, await photograph(hand, seen));
  await hand.tap('[data-test="photo"]');
  await measure(hand, seen, "measure");
  await hand.find('[data-test="photo-sizes"]');
  assert.equal(await hand.textOf('[data-test="photo-aid"]'), "An aid for the record. No diagnosis.");
  await look(hand)("measure-result");
  assert.equal((await view()).photos[0].measures.length, 0, "nothing is written before it is kept");
  await hand.tap('[data-test="measure-keep"]');
  await hand.find('[data-test="photo-measure"]');
  const { fact } = (await view()).timeline.find((line) => line.fact.kind === "photo_measured");
  const { sizes, tracing, formula } = fact.data;
  const near = ({ value, plus_minus }, wanted) => Math.abs(value - wanted) <= Math.max(plus_minus, wanted * 0.02);
  assert.ok(near(sizes.length, 19_000) && near(sizes.breadth, 16_000) && near(sizes.area, Math.PI * 95 * 80), JSON.stringify(sizes));
  assert.ok(near(sizes.insertion.distance, 5_100) && !sizes.insertion.outside, JSON.stringify(sizes));
  assert.deepEqual([tracing.corners.length, tracing.outline.length, formula], [8, 36, 1]);
  await look(hand)("kept");
  await hand.tap('[data-test="offer-disc-length"]');
  await at(hand, "offer-disc-length").waitFor({ state: "detached" });
  const item = (await view()).examinations[0].items.find((one) => one.item === "disc-length");
  assert.equal(item.answer.value, Math.round(sizes.length.value / 100));
  for (const theme of ["night", "red"]) {
    await hand.page.evaluate((name) => (document.documentElement.dataset.theme = name), theme);
    await look(hand)(`kept-${theme}`);
  }
  await hand.tap('[data-test="photo-measure-begin"]');
  await hand.tap('[data-test="reference-one_card"]');
  await hand.tap('[data-test="step-next"]');
  await hand.find('[data-test="photo-stage"] img');
  await (await touch(hand, [800, 900]))(join(out, "red-loupe.png"));
  assert.deepEqual(hand.problems, []);
});

test("a bundle for another program has the photographs only where that is asked for", { timeout: 180_000 }, async (t) => {
  const { hand } = await placenta(t);
  await hand.tap('[data-test="photographs"]');
  await take(hand, await photograph(hand, camera(0)));
  await hand.tap('[data-test="sheet-close"]');
  await hand.tap('[data-test="tab-record"]');
  const pictures = async (file) => {
    const { entry } = JSON.parse(readFileSync(await writeFile(hand, file), "utf8"));
    const kept = entry.map(({ resource }) => resource).filter(({ contentType }) => contentType === "image/jpeg");
    return kept.map(({ data }) => Buffer.from(data, "base64"));
  };
  assert.equal((await pictures("fhir")).length, 0);
  await hand.tap('[data-test="hand-out"]');
  await at(hand, "file-fhir-photos").scrollIntoViewIfNeeded();
  await look(hand)("hand-out");
  await hand.tap('[data-test="sheet-close"]');
  const [picture, ...more] = await pictures("fhir-photos");
  assert.equal(more.length, 0);
  assert.equal(picture.readUInt16BE(0), 0xffd8, "a JPEG");
  assert.ok(picture.length > 20_000, "the large one");
  assert.deepEqual(hand.problems, []);
});

test("a camera that was held too slant is told, and nothing is measured", { timeout: 180_000 }, async (t) => {
  const { hand, view } = await placenta(t);
  await measuringOn(hand);
  await hand.tap('[data-test="photographs"]');
  const seen = camera(31);
  await take(hand, await photograph(hand, seen));
  await hand.tap('[data-test="photo"]');
  await measure(hand, seen, "slant");
  await hand.find('[data-test="photo-refused"]');
  assert.match(await hand.textOf('[data-test="photo-refused"]'), /too slant: more than 25°/);
  assert.ok(await at(hand, "measure-keep").isDisabled());
  await look(hand)("slant-refused");
  assert.equal((await view()).photos[0].measures.length, 0);
});
