// A birth is handed over in a minute: read out, scanned by a program of others, on one page, and who has it stands in the chart.

import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { copyFileSync, mkdirSync, writeFileSync } from "node:fs";
import { join, resolve } from "node:path";
import { after, before, test } from "node:test";

import { createPractice } from "./birth.mjs";
import { at, emptyPhone, launch, until } from "./browser.mjs";
import { call, now } from "./core.mjs";

/** Pictures of what is in sight: a sheet lies over the page. */
const out = resolve("out/handover");
mkdirSync(out, { recursive: true });
const pictures = (hand) => async (name) => writeFileSync(join(out, `${name}.png`), await hand.picture());
let browser;
before(async () => {
  browser = await launch();
});
after(() => browser.close());

const CLIENT = { name: "Élodie Åström", born: "1996-11-20", gestation: 276, gravida: 2, para: 1, blood_group: "B Rh positive", allergies: "penicillin" };
const LOOK = { pulse: 118, systolic: 92, diastolic: 54, respirations: 22, fundus: "soft", bleeding: "heavy" };

/** A phone, with as many points to a pixel as phones have, at a birth that bleeds. */
async function bleeding(t, size) {
  const { hand, folder } = await emptyPhone(t, browser, { scale: 2, ...size });
  await createPractice(hand);
  await hand.tap('[data-test="baby-born"]');
  await hand.find('[data-test="mark-cord_clamped"]');
  const { births } = await call(hand, { request: "births", skip: 0, take: 1 });
  const record = async (kind, data) => assert.ok((await call(hand, { request: "record", birth: births[0].birth, fact: data ? { kind, data } : { kind }, at: now })).entry);
  await record("client_recorded", CLIENT);
  await record("mother_observed", LOOK);
  await record("blood_loss", { method: "jug", volume: 650 });
  await record("medicine_given", { name: "oxytocin", dose: "10 IU", route: "IM", uterotonic: true });
  for (const step of ["help_called", "uterus_massaged", "ambulance_called", "vein_opened", "fluid_started", "compression_started"]) await record("response_marked", { step });
  return { hand, folder, tap: (name) => hand.tap(`[data-test="${name}"]`), record };
}

/** A picture as another telephone sees it: smaller, and with noise on every point. */
function seen(page, png, share, noise) {
  return page.evaluate(
    async ([letters, share, noise]) => {
      const image = await createImageBitmap(await (await fetch(`data:image/png;base64,${letters}`)).blob());
      const canvas = new OffscreenCanvas(Math.round(image.width * share), Math.round(image.height * share));
      const pen = canvas.getContext("2d");
      pen.drawImage(image, 0, 0, canvas.width, canvas.height);
      const points = pen.getImageData(0, 0, canvas.width, canvas.height);
      let chance = 7;
      for (let at = 0; at < points.data.length; at += 4) {
        chance = (chance * 1_103_515_245 + 12_345) % 2_147_483_648;
        const off = (chance / 2_147_483_648 - 0.5) * 2 * noise;
        for (let colour = 0; colour < 3; colour += 1) points.data[at + colour] += off;
      }
      pen.putImageData(points, 0, 0);
      const bytes = new Uint8Array(await (await canvas.convertToBlob({ type: "image/png" })).arrayBuffer());
      return btoa(Array.from(bytes, (byte) => String.fromCharCode(byte)).join(""));
    },
    [png.toString("base64"), share, noise],
  );
}

test("it is read out with one touch from the emergency, its ages run, and nothing has to be typed", async (t) => {
  const { hand, tap } = await bleeding(t);
  const look = pictures(hand);
  await tap("emergency");
  await tap("emergency-handover");
  await hand.page.locator('[data-test="handover"]', { hasText: "Help called" }).waitFor();
  const told = await hand.textOf('[data-test="handover"]');
  const order = ["Situation", "Élodie Åström", "NOT born", "650 mL", "pulse 118", "Background", "B Rh positive", "penicillin", "oxytocin 10 IU, IM", "Assessment", "Help called", "Request", "nothing written"];
  let from = 0;
  for (const words of order) {
    const place = told.indexOf(words, from);
    assert.ok(place >= 0, `${words} comes in its place in ${told}`);
    from = place;
  }
  const size = await hand.run('return parseFloat(getComputedStyle(document.querySelector("[data-test=handover] p")).fontSize)');
  assert.ok(size >= 24, `${size} px is large`);
  const age = () => hand.textOf('[data-test="handover"] .age [role="timer"]');
  const before = await age();
  await until("the age runs", async () => (await age()) !== before);
  await look("read-out");

  // What she asks for is hers, and stands there.
  await tap("handover-ask");
  await hand.type('[data-test="asked-for-text"]', "Theatre ready");
  await tap("save");
  await hand.page.locator('[data-test="handover"]', { hasText: "Theatre ready" }).waitFor();
  assert.deepEqual(hand.problems, []);
});

test("another program reads the code off the screen in each light, half as large, and with noise", { timeout: 120_000 }, async (t) => {
  const { hand, folder, tap } = await bleeding(t);
  await tap("emergency");
  await tap("emergency-handover");
  await hand.find('[data-test="code-show"]');
  assert.equal(await at(hand.page, "qr").count(), 0, "only on demand");
  await tap("code-show");
  await hand.find('[data-test="qr"]');
  const text = (await at(hand.page, "code-text").innerText()).trim();
  assert.ok(Buffer.byteLength(text) <= 600 && Buffer.byteLength(text) > 450, `${Buffer.byteLength(text)} bytes`);
  for (const words of ["SBAR", "Élodie Åström", "NOT born", "650 mL", "oxytocin 10 IU, IM", "… more in the record"]) assert.ok(text.includes(words), `${words} in ${text}`);
  const path = join(folder, "code.png");
  // The page's own policy lets it read no picture.
  const other = await browser.newPage();
  t.after(() => other.close());
  let read = 0;
  for (const theme of ["day", "night", "red"]) {
    await hand.run(`document.documentElement.dataset.theme = "${theme}"; document.querySelector("[data-test=qr]").scrollIntoView({ block: "center" })`);
    await hand.page.waitForTimeout(200);
    const png = await hand.page.screenshot();
    for (const [share, noise] of [[1, 0], [0.5, 0], [1, 40], [0.5, 40]]) {
      writeFileSync(path, Buffer.from(await seen(other, png, share, noise), "base64"));
      const told = execFileSync("zbarimg", ["-q", "--raw", "--nodbus", "-S*.enable=0", "-Sqrcode.enable=1", path], { encoding: "utf8" });
      assert.equal(told.trim(), text, `${theme}, ${share} of the size, noise ${noise}`);
      read += 1;
    }
  }
  assert.equal(read, 12);
  await pictures(hand)("code-red");

  // It goes when the page is put away, and when the sheet is closed.
  await hand.run('Object.defineProperty(document, "hidden", { value: true, configurable: true }); document.dispatchEvent(new Event("visibilitychange")); delete document.hidden');
  await at(hand.page, "qr").waitFor({ state: "detached" });
  await tap("code-show");
  await hand.find('[data-test="qr"]');
  await hand.tap('[data-test="sheet-close"]', "last");
  await tap("emergency-handover");
  await hand.find('[data-test="code-show"]');
  assert.equal(await at(hand.page, "qr").count(), 0);
  assert.deepEqual(hand.problems, []);
});

test("a page is written, given, and it stands in the chart who has it", async (t) => {
  const { hand, tap } = await bleeding(t);
  const look = pictures(hand);
  await tap("tab-record");
  await tap("hand-out");
  await tap("file-transfer");
  const path = (await hand.textOf('[data-test="file-path"]')).trim();
  assert.ok(path.includes("/transfer-"), path);
  copyFileSync(path, join(out, "transfer.pdf"));
  assert.match(execFileSync("pdfinfo", [path], { encoding: "utf8", stdio: ["ignore", "pipe", "ignore"] }), /Pages:\s+1\n/);
  const text = execFileSync("pdftotext", ["-layout", path, "-"], { encoding: "utf8" });
  const places = ["Situation", "Background", "Assessment", "Request", "Taken over by"].map((words) => text.indexOf(words));
  assert.ok(places.every((place, n) => place > (places[n - 1] ?? 0)), text);
  assert.match(await hand.textOf('[data-test="given"]'), /Nothing is recorded/, "a file that was written is in nobody's hands yet");
  await look("file-written");
  await tap("file-given");
  await hand.find('[data-test="shared-to-hospital"][aria-pressed="true"]');
  await hand.type('[data-test="shared-name"]', "Dr Okafor");
  await look("given-to");
  await tap("save");
  const line = "Given to hospital, Dr Okafor: transfer sheet (on paper)";
  await hand.page.locator('[data-test="given"]', { hasText: line }).waitFor();
  await look("given");
  await tap("sheet-close");
  await hand.page.locator('[data-test="record-given"]', { hasText: line }).waitFor();
  await tap("tab-timeline");
  await hand.page.locator('[data-test="line"][data-kind="shared"]', { hasText: line }).waitFor();
  await tap("more");
  await tap("more-leaving");
  await hand.page.locator('[data-test="leaving-shared"]', { hasText: line }).waitFor();
  await tap("leaving-handover");
  await hand.find('[data-test="handover"]');
  assert.deepEqual(hand.problems, []);
});

test("without names there is no code and no file, and nobody is called not recorded", async (t) => {
  const { hand, tap } = await bleeding(t);
  await tap("emergency");
  await tap("emergency-handover");
  await tap("code-show");
  await hand.find('[data-test="qr"]');
  // As after a while without a touch; the next question tells the page.
  await call(hand, { request: "rest" });
  await tap("code-hide");
  await tap("code-show");
  await hand.find('[data-test="handover"]:not(:has-text("Élodie"))');
  assert.equal(await hand.has('[data-test="qr"], [data-test="code-show"], [data-test="handover-files"], [data-test="handover-ask"]'), false);
  const told = await hand.textOf('[data-test="handover"]');
  assert.ok(!told.includes("Blood group") && told.includes("650 mL") && told.includes("Help called"), told);
});
