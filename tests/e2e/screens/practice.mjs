// The first run, the list of births, and all that belongs to the practice.

import { setTimeout as sleep } from "node:timers/promises";

import { PASSPHRASE, pastWhatItIs } from "../birth.mjs";
import { call } from "../core.mjs";
import { record } from "./start.mjs";

/** The list of births, whatever is open. */
async function toList(d) {
  await d.hand.anew();
  await d.find("births");
}

async function toPractice(d) {
  await d.tap("menu");
  await d.tap("practice");
}

/** Births at every phase, so many of them. */
async function fill(hand) {
  const phases = [[], ["baby_born"], ["baby_born", "placenta_born"]];
  for (const [n, label] of ["Mill Lane", "Quay Street", "Upper Farm at the end of the long road to the lighthouse"].entries()) {
    const { birth } = await call(hand, { request: "register_birth", label });
    if (n) await record(hand, birth, "client_recorded", { name: `Rosa ${"Longname-".repeat(n)}Quill`, gestation: 280, gravida: 2, para: 1, born: null, blood_group: null, allergies: null });
    for (const kind of phases[n]) await record(hand, birth, kind, kind === "baby_born" ? { baby: 1 } : { babies: [1] });
  }
}

const TABLE = "# source: A made-up cohort\n# weighed: untrimmed\nweek,p10,p50,p90\n39,400,500,600\n40,900,510,610\n";
const csv = (text) => ({ name: "table.csv", mimeType: "text/csv", buffer: Buffer.from(text) });

export const practice = {
  "what-it-is": (d) => d.find("first-run-on"),
  "first-run": async (d) => {
    await pastWhatItIs(d.hand);
    await d.find("create-practice");
  },
  "first-run-error": async (d) => {
    await d.type("practice-name", "Harbour Midwives");
    await d.type("practitioner", "Ida Lindqvist");
    await d.type("role", "midwife");
    await d.tap("protocol-nice-rcog");
    await d.type("passphrase", PASSPHRASE);
    await d.type("passphrase-again", PASSPHRASE.slice(1));
    await d.tap("create-practice");
    await d.find("create-error");
  },
  recovery: async (d) => {
    await d.type("passphrase-again", PASSPHRASE);
    await d.tap("create-practice");
    await d.find("recovery-identity");
  },
  "births-empty": async (d) => {
    const identity = (await d.hand.textOf('[data-test="recovery-identity"]')).trim();
    await d.type("recovery-check", identity.slice(-4));
    await d.tap("recovery-done");
    await d.find("births-empty");
  },
  preparing: async (d) => {
    await d.tap("prepare");
    await d.type("prepare-label", "Mill Lane");
  },
  waiting: async (d) => {
    await d.tap("prepare-save");
    await d.find("mark-baby_born");
  },
  births: async (d) => {
    await fill(d.hand);
    await toList(d);
    await d.find("birth");
  },
  "before-birth": async (d) => {
    await d.tap("before-birth");
    await d.find("before-protocol");
  },
  menu: async (d) => {
    await d.tap("sheet-close");
    await d.tap("menu");
  },
  languages: async (d) => {
    await d.tap("language");
    await d.find("language-es");
  },
  device: async (d) => {
    await toList(d);
    await d.tap("menu");
    await d.tap("device");
    await d.find("hand-left");
  },
  about: async (d) => {
    await toList(d);
    await d.tap("menu");
    await d.tap("about");
    await d.find("about-protocol");
  },
  notices: async (d) => {
    await d.tap("notices");
    await d.find("notice");
  },
  check: async (d) => {
    await toList(d);
    await d.tap("menu");
    await d.tap("check");
    await d.find("check-verdict");
  },
  practice: async (d) => {
    await toList(d);
    await toPractice(d);
    await d.find("protocol-text-nice-rcog");
  },
  "protocol-text": (d) => d.hand.tap('[data-test="protocol-text-nice-rcog"] summary'),
  keys: async (d) => {
    await d.tap("keys");
    await d.find("keys-ways");
  },
  "key-check": async (d) => {
    await d.tap("keys-check");
    await d.type("check-identity", "AGE-SECRET-KEY-1QQQQ");
    await d.tap("check-do");
    await d.find("check-wrong");
  },
  "keys-folds": async (d) => {
    for (const fold of ["keys-change", "keys-new", "keys-revoke-recovery", "keys-wipe"]) {
      if (await d.hand.has(`[data-test="${fold}"]`)) await d.tap(fold);
    }
  },
  "backups-none": async (d) => {
    await d.tap("keys-back");
    await d.tap("backups");
    await d.find("backups-none");
  },
  "backup-going": async (d) => {
    const far = await d.hand.hold("backups");
    await d.tap("backup-make");
    await d.find("backup-going");
    return far.all;
  },
  backups: (d) => d.find("backup-made"),
  "backup-add": (d) => d.tap("backup-add"),
  medicines: async (d) => {
    await toList(d);
    await toPractice(d);
    await d.tap("medicines");
    for (const [name, dose] of [["ergometrine", "500 micrograms"], ["arnica", "5 drops"]]) {
      await d.type("list-name", name);
      await d.type("list-dose", dose);
      await d.type("list-route", "IM");
      await d.tap("list-uterotonic-no");
      await d.tap("medicines-add");
      await d.hand.page.locator('[data-test="medicines-list"]', { hasText: dose }).waitFor();
    }
  },
  "medicines-removed": async (d) => {
    await d.tap("medicines-remove-1");
    await d.find("medicines-undo");
  },
  weights: async (d) => {
    await d.tap("medicines-back");
    await d.tap("weights");
    await d.find("weights-now");
  },
  "weights-error": async (d) => {
    await d.hand.page.locator('[data-test="weights-load"]').setInputFiles(csv(TABLE));
    await d.find("weights-error");
  },
  "weights-loaded": async (d) => {
    await d.hand.page.locator('[data-test="weights-load"]').setInputFiles(csv(TABLE.replace("900", "410")));
    await d.find("weights-remove");
  },
  "own-protocol": async (d) => {
    await d.tap("weights-back");
    await d.tap("own-protocol");
    await d.find("own-count");
  },
  "own-group": (d) => d.tap("own-group-own-blood"),
  "own-field": async (d) => {
    await d.tap("own-field-blood-loss.limit.over.1");
    await d.find("own-save");
  },
  "own-field-error": async (d) => {
    await d.tap("own-value-more");
    await d.tap("own-save");
    await d.find("own-field-error");
  },
  "own-filled": async (d) => {
    await d.tap("sheet-close");
    await d.tap("own-fill");
    await d.find("own-log");
  },
  "own-head": (d) => d.tap("own-head"),
  "own-refused": async (d) => {
    await d.type("own-title", "Harbour protocol");
    await d.type("own-edition", "first, 2026");
    await d.type("own-checked", "2026-11-25");
    await d.tap("own-head-save");
    await d.gone("own-head-save");
    const file = { name: "bad.toml", mimeType: "text/plain", buffer: Buffer.from('title = "Ours"\n[[watch]]\nwatch = "pulse"\n') };
    await d.hand.page.setInputFiles('[data-test="own-import"]', file);
    await d.find("own-refused");
  },
  rehearse: async (d) => {
    await toList(d);
    await d.tap("menu");
    await d.tap("rehearse");
    await d.find("rehearse-start");
  },
  rehearsal: async (d) => {
    await d.tap("rehearse-watch");
    await d.tap("speed-60");
    await d.tap("rehearse-start");
    await d.find("cue");
    await sleep(4_000);
  },
  "rehearsal-births": async (d) => {
    await d.tap("back");
    await d.find("births");
  },
  "rehearsal-menu": (d) => d.tap("menu"),
  locked: async (d) => {
    await d.hold("end-rehearsal");
    await d.gone("strip");
    const { births } = await call(d.hand, { request: "births", skip: 0, take: 9 });
    for (const { birth, phase } of births) {
      if (phase === "third_stage") await record(d.hand, birth, "placenta_born", { babies: [1] });
    }
    await call(d.hand, { request: "lock" });
    await d.hand.anew();
    await d.find("locked-baby-born");
  },
  "unlock-error": async (d) => {
    await d.type("passphrase", "something else");
    await d.tap("unlock");
    await d.find("unlock-error");
  },
  "unlock-waiting": async (d) => {
    for (let tries = 0; tries < 12 && !(await d.hand.has('[data-test="waiting"]')); tries += 1) {
      await d.tap("unlock");
      await d.hand.find('[data-test="unlock"]:disabled');
      await d.hand.find('[data-test="unlock"]:enabled, [data-test="waiting"]');
    }
    await d.find("waiting");
  },
  "rehearse-locked": async (d) => {
    await d.tap("rehearse");
    await d.find("rehearse-start");
  },
};
