// The main job in the real window: WebKitGTK under an X server, the program as it is shipped.

import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { mkdirSync, mkdtempSync, rmSync, statSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { test } from "node:test";
import { setTimeout as sleep } from "node:timers/promises";

import { PASSPHRASE, canSpeak, checkRecord, createPractice, examine, lookAtMother, thirdStage, writeRecord } from "./birth.mjs";
import { openWindow } from "./webdriver.mjs";

const program = resolve(process.env.SECUNDINE_APP ?? "target/debug/secundine-app");
const out = resolve("out/window");
mkdirSync(out, { recursive: true });

const looker = (hand) => async (name) => {
  await sleep(600); // A picture races the paint.
  writeFileSync(join(out, `${name}.png`), await hand.picture());
};

test("a birth from the first tap to the printed record", { timeout: 240_000 }, async (t) => {
  const folder = mkdtempSync(join(tmpdir(), "secundine-"));
  t.after(() => rmSync(folder, { recursive: true, force: true }));
  const hand = await openWindow(program, { SECUNDINE_FOLDER: folder });
  t.after(() => hand.close());
  const look = looker(hand);
  await createPractice(hand, look);
  const moments = await thirdStage(hand, look);
  const mother = await lookAtMother(hand, look);
  assert.ok(mother.taps <= 8 && mother.took < 20_000, JSON.stringify(mother));
  const exam = await examine(hand, look);
  const path = await writeRecord(hand, look);
  const durations = checkRecord(path, moments);
  writeFileSync(join(out, "record.pdf"), execFileSync("cat", [path]));
  assert.ok(exam.taps <= 36 && exam.took < 90_000, JSON.stringify(exam));
  t.diagnostic(`a full look at the mother: ${mother.taps} taps beside the figures, ${mother.took} ms; examination: ${exam.taps} taps, ${exam.took} ms; ${JSON.stringify(durations)}`);
});

test("what this window can read aloud and record is told, and an answer stands either way", { timeout: 120_000 }, async (t) => {
  const folder = mkdtempSync(join(tmpdir(), "secundine-"));
  t.after(() => rmSync(folder, { recursive: true, force: true }));
  const hand = await openWindow(program, { SECUNDINE_FOLDER: folder });
  t.after(() => hand.close());
  await createPractice(hand);
  t.diagnostic(JSON.stringify(await canSpeak(hand)));
});

test("killed in the third stage, the clocks run on", { timeout: 120_000 }, async (t) => {
  const folder = mkdtempSync(join(tmpdir(), "secundine-"));
  t.after(() => rmSync(folder, { recursive: true, force: true }));
  let hand = await openWindow(program, { SECUNDINE_FOLDER: folder });
  await createPractice(hand);
  await hand.find('[data-test="baby-born"]');
  const before = performance.now();
  await hand.tap('[data-test="baby-born"]');
  const after = performance.now();
  await hand.find('[data-test="mark-cord_clamped"]');
  execFileSync("pkill", ["-KILL", "-f", program]);
  await hand.close();
  await sleep(1_000);

  hand = await openWindow(program, { SECUNDINE_FOLDER: folder });
  t.after(() => hand.close());
  await hand.type('[data-test="passphrase"]', PASSPHRASE);
  await hand.tap('[data-test="unlock"]');
  await hand.tap('[data-test="birth"]');
  const clock = await hand.textOf('[data-test="clock"]');
  const now = performance.now();
  const [minutes, seconds] = /(\d+):(\d\d)/.exec(clock).slice(1).map(Number);
  const shown = minutes * 60 + seconds;
  assert.ok(shown >= (now - after) / 1000 - 2 && shown <= (now - before) / 1000 + 1, `${clock} after ${(now - before) / 1000} s`);
});

// The driver loses its hold on the page with that process, so the screen itself is looked at.
test("the process that draws the page is killed in the third stage, and the screen is back", { timeout: 120_000 }, async (t) => {
  const folder = mkdtempSync(join(tmpdir(), "secundine-"));
  t.after(() => rmSync(folder, { recursive: true, force: true }));
  const hand = await openWindow(program, { SECUNDINE_FOLDER: folder });
  const picture = join(out, "drawn-again.png");
  /** Bytes of a picture of the screen: a blank one takes next to none. */
  const seen = () => {
    execFileSync("scrot", ["--overwrite", picture]);
    return statSync(picture).size;
  };
  await createPractice(hand);
  await hand.tap('[data-test="baby-born"]');
  await hand.find('[data-test="mark-cord_clamped"]');
  await sleep(1_000);
  const before = seen();
  execFileSync("pkill", ["-KILL", "-f", "WebKitWebProcess"]);
  const killed = performance.now();
  let [least, now] = [before, 0];
  while (now < before * 0.9 || least > before * 0.5) {
    await sleep(50);
    now = seen();
    least = Math.min(least, now);
    if (performance.now() - killed > 10_000) break;
  }
  const took = performance.now() - killed;
  execFileSync("pkill", ["-KILL", "-f", program]);
  await hand.close();
  t.diagnostic(`${before} bytes, ${least} when blank, ${now} after ${Math.round(took)} ms`);
  assert.ok(least < before * 0.5, "the page was gone");
  assert.ok(now >= before * 0.9, `${now} of ${before} bytes after ${took} ms`);
});
