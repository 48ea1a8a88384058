// Plays the rehearsal in the real window and leaves pictures and the record in out/rehearsal.

import { copyFileSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { setTimeout as sleep } from "node:timers/promises";

import { pastWhatItIs, writeFile } from "./birth.mjs";
import { openWindow } from "./webdriver.mjs";

const out = resolve("out/rehearsal");
mkdirSync(out, { recursive: true });
const folder = mkdtempSync(join(tmpdir(), "secundine-"));
const hand = await openWindow(resolve(process.env.SECUNDINE_APP ?? "target/debug/secundine-app"), { SECUNDINE_FOLDER: folder });

async function look(name) {
  await sleep(800); // A picture races the paint.
  writeFileSync(join(out, `${name}.png`), await hand.picture());
  console.log(`out/rehearsal/${name}.png`);
}

try {
  await look("1-first-run");
  await pastWhatItIs(hand);
  await hand.tap('[data-test="rehearse"]');
  await hand.tap('[data-test="rehearse-watch"]');
  await hand.tap('[data-test="speed-60"]');
  await look("2-rehearse");
  await hand.tap('[data-test="rehearse-start"]');
  await hand.find('[data-test="clock"]');
  await sleep(3_500);
  await look("3-third-stage");
  await sleep(18_000);
  await look("4-placenta-born");
  while (!(await hand.run("return [...document.querySelectorAll('[data-test=cue]')].some((cue) => cue.innerText.includes('Tea'))"))) await sleep(500);
  await hand.tap('[data-test="tab-exam"]');
  await look("5-examination");
  await hand.tap('[data-test="tab-timeline"]');
  await look("6-timeline");
  await hand.tap('[data-test="tab-record"]');
  await look("7-record");
  copyFileSync(await writeFile(hand, "record"), join(out, "record.pdf"));
  console.log("out/rehearsal/record.pdf");
} finally {
  await hand.close();
  rmSync(folder, { recursive: true, force: true });
}
