// A disk that refuses, missing keys, a backup brought back, and a damaged store.

import { readFileSync, readdirSync, rmSync } from "node:fs";
import { setTimeout as sleep } from "node:timers/promises";

import { PASSPHRASE } from "../birth.mjs";
import { backUp, call, note } from "../core.mjs";
import { damage, limitFiles } from "../device.mjs";
import { SETTLED_MS, born } from "./start.mjs";

async function unlock(d) {
  await d.type("passphrase", PASSPHRASE);
  await d.tap("unlock");
}

const choose = (d, name, buffer) => d.hand.page.locator('[data-test="restore-file"]').setInputFiles({ name, mimeType: "application/octet-stream", buffer });

export const harm = {
  "not-saved": async (d) => {
    await born(d);
    limitFiles(d.bridge, 4096);
    await sleep(SETTLED_MS);
    await d.tap("mark-cord_clamped");
    await d.find("not-saved-elsewhere");
  },
  "kept-elsewhere": async (d) => {
    await d.tap("not-saved-elsewhere");
    await d.hand.find('[data-test="not-saved"].kept');
  },
  "sheet-elsewhere": async (d) => {
    await d.tap("not-saved-dismiss");
    await d.enter("noted");
    await d.type("note-text", "Father holds the lamp");
    await sleep(600);
    await d.tap("save");
    await d.find("sheet-elsewhere");
  },
  elsewhere: async (d) => {
    await d.tap("sheet-elsewhere");
    await d.find("band-elsewhere");
  },
  "keys-missing": async (d) => {
    limitFiles(d.bridge, "unlimited");
    await d.bridge.stop();
    await d.begin();
    await unlock(d);
    await d.tap("drained-done");
    for (let n = 1; n <= 12; n += 1) {
      const { birth } = await call(d.hand, { request: "register_birth", label: `House ${n}` });
      for (let line = 0; line < 6; line += 1) await note(d.hand, birth, `Line ${line} at house ${n}. ${"Quiet. ".repeat(40)}`);
    }
    d.backup = readFileSync(await backUp(d.hand));
    await d.bridge.stop();
    for (const name of readdirSync(`${d.folder}/practice`).filter((one) => one.endsWith(".age"))) rmSync(`${d.folder}/practice/${name}`);
    await d.begin();
    await d.find("keys-missing");
  },
  restore: async (d) => {
    await d.tap("restore");
    await d.find("restore-file");
  },
  "restore-wrong": async (d) => {
    await choose(d, "kept.tar", d.backup);
    await d.type("restore-passphrase", "something else");
    await d.tap("restore-do");
    await d.find("restore-wrong");
  },
  restored: async (d) => {
    await d.type("restore-passphrase", PASSPHRASE);
    await d.tap("restore-do");
    await d.find("restored");
  },
  damaged: async (d) => {
    await d.tap("restored-done");
    await call(d.hand, { request: "lock" });
    await d.bridge.stop();
    damage(`${d.folder}/practice`);
    damage(`${d.folder}/practice`, 0);
    await d.begin();
    await unlock(d);
    await d.find("damaged");
  },
  "damaged-wrong": async (d) => {
    await d.tap("damaged-read");
    await d.type("read-passphrase", "not this one");
    await d.tap("read-do");
    await d.find("read-wrong");
  },
  "damaged-report": async (d) => {
    await d.type("read-passphrase", PASSPHRASE);
    await sleep(600);
    await d.tap("read-do");
    await d.find("salvaged");
  },
  "read-only-births": async (d) => {
    await d.tap("salvaged-done");
    await d.find("birth");
  },
  "read-only-stage": async (d) => {
    await d.tap("birth");
    await d.find("mark-baby_born");
  },
  "read-only-more": (d) => d.tap("more"),
  salvage: async (d) => {
    await d.tap("sheet-close");
    await d.tap("back");
    await d.tap("salvage-report");
    await d.tap("salvage-open");
  },
  salvaged: async (d) => {
    await d.type("salvage-passphrase", PASSPHRASE);
    await d.hold("salvage-do");
    await d.find("salvage-aside");
  },
};
