// A whole birth by hand, from an empty device to the printed record. The hand is a window or a browser:
// tap, type, textOf, has, find, picture.

import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { setTimeout as sleep } from "node:timers/promises";

export const PASSPHRASE = "lantern kettle bicycle";

/** From what it is and is not, which an empty device shows first, to the founding. */
export const pastWhatItIs = (hand) => hand.tap('[data-test="first-run-on"]');

/** Founds a practice, mistyping once, and keeps the recovery identity. */
export async function createPractice(hand, look = async () => {}, protocol = "nice-rcog") {
  await pastWhatItIs(hand);
  await hand.type('[data-test="practice-name"]', "Harbour Midwives");
  await hand.type('[data-test="practitioner"]', "Ida Lindqvist");
  await hand.type('[data-test="role"]', "midwife");
  await hand.tap(`[data-test="protocol-${protocol}"]`);
  await hand.type('[data-test="passphrase"]', PASSPHRASE);
  await hand.type('[data-test="passphrase-again"]', PASSPHRASE.slice(1));
  await hand.tap('[data-test="create-practice"]');
  await hand.find('[data-test="create-error"]');
  await hand.type('[data-test="passphrase-again"]', PASSPHRASE);
  await look("first-run");
  await hand.tap('[data-test="create-practice"]');
  const identity = (await hand.textOf('[data-test="recovery-identity"]')).trim();
  assert.match(identity, /^AGE-SECRET-KEY-1[A-Z0-9]{58}$/);
  await look("recovery");
  await hand.type('[data-test="recovery-check"]', identity.slice(-4));
  await hand.tap('[data-test="recovery-done"]');
  await hand.find('[data-test="baby-born"]');
  await look("births-empty");
  return identity;
}

/** Taps a mark; tells when the finger was down, as an interval in ms. */
export async function mark(hand, selector) {
  await hand.find(selector);
  const from = performance.now();
  await hand.tap(selector);
  return { from, to: performance.now() };
}

/** Baby born, pulsation stopped, clamped, placenta, membranes. Gives the moments of the taps. */
export async function thirdStage(hand, look) {
  const born = await mark(hand, '[data-test="baby-born"]');
  await hand.find('[data-test="mark-cord_pulsation_stopped"]');
  await sleep(2_300);
  await look("third-stage");
  const stopped = await mark(hand, '[data-test="mark-cord_pulsation_stopped"]');
  await hand.find('[data-test="undo"]');
  await look("third-stage-undo");
  await sleep(1_200);
  await mark(hand, '[data-test="mark-cord_clamped"]');
  await mark(hand, '[data-test="mark-cord_cut"]');
  await sleep(1_700);
  const placenta = await mark(hand, '[data-test="mark-placenta_born"]');
  await mark(hand, '[data-test="mark-membranes_born"]');
  return { born, stopped, placenta };
}

/** Everything about the mother in one look; the number of taps beside the figures, and ms from the open sheet to the saved one. */
export async function lookAtMother(hand, look = async () => {}) {
  await hand.tap('[data-test="more"]');
  await hand.tap('[data-test="enter-mother_observed"]');
  await hand.find('[data-test="pad-8"]');
  const began = performance.now();
  for (const figure of "88" + "118" + "72" + "16" + "368" + "98" + "2") await hand.tap(`[data-test="pad-${figure}"]`);
  await look("observation-figures");
  const taps = ["fundus-firm", "bleeding-light", "response-alert", "fundal-position-central", "bladder-passed_urine", "save"];
  for (const name of taps) await hand.tap(`[data-test="${name}"]`);
  while (await hand.has('[data-test="save"]')) await sleep(50);
  return { taps: taps.length, took: Math.round(performance.now() - began) };
}

/** What is found at a placenta without anything unusual; what is not named is the item's first choice. */
const FOUND = {
  ready: ["exam-all"],
  "fetal-vessels": ["option-to-edge"],
  insertion: ["option-eccentric"],
  "insertion-edge": ["quick-40"],
  "tear-edge": ["quick-80"],
  "cord-length": ["quick-550", "exam-all-pieces"],
  "cord-thickness": ["quick-12"],
  "cord-coils": ["quick-12", "quick-550"],
  "maternal-surface": ["option-even"],
  "disc-length": ["quick-200"],
  "disc-breadth": ["quick-180"],
  "disc-thickness": ["quick-25"],
  weight: ["pad-5", "pad-6", "pad-0", "exam-keep"],
  told: ["exam-all"],
};

/** Answers each item as one does who finds nothing unusual; gives the number of taps and how long it took. */
export async function examine(hand, look) {
  let taps = 0;
  await hand.tap('[data-test="tab-exam"]');
  const began = performance.now();
  for (let last = null; ; ) {
    const item = await changed(hand, last);
    if (!item) break;
    if (last === null || item === "cord-coils" || item === "weight") await look(`exam-${item}`);
    for (const name of FOUND[item] ?? ["option-"]) {
      await hand.tap(name === "option-" ? '[data-test^="option-"]' : `[data-test="${name}"]`);
      taps += 1;
    }
    last = item;
  }
  const took = Math.round(performance.now() - began);
  await look("exam-done");
  return { taps, took };
}

/** Opens the examination, and answers an item by two keys where the device can read, else by touch; tells what it can. */
export async function canSpeak(hand) {
  await hand.tap('[data-test="baby-born"]');
  await hand.find('[data-test="mark-cord_clamped"]');
  await sleep(1_500);
  await hand.tap('[data-test="more"]');
  await hand.tap('[data-test="more-mark-placenta_born"]');
  await hand.tap('[data-test="tab-exam"]');
  await hand.find('[data-test="exam-question"]');
  await sleep(500);
  const has = async (...names) => Promise.all(names.map((name) => hand.has(`[data-test="${name}"]`)));
  const [reads, readsNot, records, recordsNot] = await has("aloud", "aloud-none", "voice-begin", "voice-none");
  assert.ok(reads !== readsNot && records !== recordsNot, "of each it is told whether the device can");
  const first = await changed(hand, null);
  if (reads) {
    await hand.tap('[data-test="aloud"]');
    for (const key of ["AudioVolumeUp", "AudioVolumeDown"]) {
      await sleep(500);
      await hand.run(`window.dispatchEvent(new KeyboardEvent("keydown", { key: "${key}" }))`);
    }
  } else {
    await hand.tap('[data-test^="option-"]');
  }
  const second = await changed(hand, first);
  if (reads) {
    await sleep(500);
    await hand.run('window.dispatchEvent(new KeyboardEvent("keydown", { key: "AudioVolumeDown" }))');
    assert.equal(await changed(hand, second), first, "what was recorded is taken back");
    // The device keeps the switch for whoever uses it next.
    await hand.tap('[data-test="aloud"]');
  }
  return { reads, records };
}

/** The item on the screen once it is another than `last`; null when the list is shown. */
async function changed(hand, last) {
  for (let tries = 0; tries < 150; tries += 1) {
    const item = await hand.run('return document.querySelector("[data-test=exam-question]")?.dataset.item ?? null');
    if (item !== null && item !== last) return item;
    if (item === null && last !== null) return null;
    await sleep(50);
  }
  throw new Error(`stays at ${last}\n${await hand.text()}`);
}

/** Signs and writes the PDF; gives its path. */
export async function writeRecord(hand, look) {
  await hand.tap('[data-test="tab-timeline"]');
  await hand.find('[data-test="timeline"]');
  await look("timeline");
  await hand.tap('[data-test="tab-record"]');
  await hand.tap('[data-test="sign"]');
  await look("record");
  const path = await writeFile(hand, "record");
  await look("record-written");
  return path;
}

/** Writes a file from the record's page, which stays open; gives its path. */
export async function writeFile(hand, file) {
  await hand.tap('[data-test="hand-out"]');
  await hand.tap(`[data-test="file-${file}"]`);
  const path = (await hand.textOf('[data-test="file-path"]')).trim();
  await hand.tap('[data-test="sheet-close"]');
  return path;
}

/** The PDF, read by another program, holds the durations that the taps imply. */
export function checkRecord(path, { born, stopped, placenta }) {
  const text = execFileSync("pdftotext", ["-layout", path, "-"], { encoding: "utf8" });
  const read = (name) => {
    const found = new RegExp(`${name}\\s+(?:(\\d+):)?(\\d+):(\\d\\d)`).exec(text);
    assert.ok(found, `${name} stands in the record:\n${text}`);
    return Number(found[1] ?? 0) * 3600 + Number(found[2]) * 60 + Number(found[3]);
  };
  const within = (name, from, to) => {
    const seconds = read(name);
    const [least, most] = [(to.from - from.to) / 1000, (to.to - from.from) / 1000];
    assert.ok(seconds >= least - 1 && seconds <= most + 1, `${name}: ${seconds} s, tapped ${least.toFixed(1)} to ${most.toFixed(1)} s`);
    return { seconds, least, most };
  };
  const durations = { pulsation: within("Cord pulsed for", born, stopped), thirdStage: within("Third stage", born, placenta) };
  for (const words of ["Ida Lindqvist, midwife", "NICE NG235 with RCOG GTG 52", "Page 1 of", "55 cm", "no doubt recorded"]) {
    assert.ok(text.includes(words), `${words} stands in the record:\n${text}`);
  }
  return durations;
}
