// The examination read aloud and answered with two keys; words spoken, sealed, and written up later.

import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { readFileSync, readdirSync } from "node:fs";
import { join } from "node:path";
import { after, before, test } from "node:test";
import { setTimeout as sleep } from "node:timers/promises";

import { PASSPHRASE, createPractice, writeFile } from "./birth.mjs";
import { emptyPhone, launch, picturesIn, until } from "./browser.mjs";

const pictures = picturesIn("voice");
const SETTLED_MS = 1_300;

let browser;
before(async () => {
  browser = await launch("--use-fake-device-for-media-stream", "--use-fake-ui-for-media-stream");
});
after(() => browser.close());

/** A device with a voice: what it was given to say, and what the page's port told of, stand in two lists. */
function withVoice() {
  const voice = { name: "local", lang: "en-GB", localService: true };
  const far = { name: "far", lang: "en-US", localService: false };
  window.given = [];
  window.told = [];
  window.addEventListener("secundine-speech", ({ detail }) => window.told.push(detail.call === "say" ? detail.text : "(stop)"));
  window.SpeechSynthesisUtterance = class {
    constructor(text) {
      this.text = text;
    }
  };
  const synthesis = Object.assign(new EventTarget(), {
    getVoices: () => [far, voice],
    speak: ({ text, voice: by, lang }) => window.given.push(by === voice && lang === "en-GB" ? text : `${text} in a wrong voice`),
    cancel: () => window.given.push("(stop)"),
  });
  Object.defineProperty(window, "speechSynthesis", { value: synthesis });
}

/** A placenta is on record, and its examination on the screen. */
async function examination(t, more) {
  const { hand, folder, bridge } = await emptyPhone(t, browser, more);
  await createPractice(hand);
  await hand.tap('[data-test="baby-born"]');
  await hand.find('[data-test="mark-cord_clamped"]');
  await sleep(SETTLED_MS);
  await hand.tap('[data-test="more"]');
  await hand.tap('[data-test="more-mark-placenta_born"]');
  await hand.tap('[data-test="tab-exam"]');
  await hand.find('[data-test="exam-question"]');
  // Past what is laid out, to the first item with a few choices.
  await hand.tap('[data-test="exam-skip"]');
  await hand.find('[data-item="fetal-surface"]');
  return { hand, folder, bridge };
}

const question = (hand) => hand.run('return document.querySelector("[data-test=exam-question]").innerText');

/** Presses a key as the phone's shell hands it to the page. */
async function press(hand, key) {
  await sleep(350);
  await hand.run(`window.dispatchEvent(new KeyboardEvent("keydown", { key: "${key}", cancelable: true }))`);
}

/** What was told since the last look, without the silences in between. */
async function told(hand, least) {
  for (let tries = 0; tries < 60; tries += 1) {
    const [told, given] = await hand.run("return [window.told, window.given]");
    if (told.filter((text) => text !== "(stop)").length >= least) {
      await hand.run("window.told = []; window.given = []");
      assert.deepEqual(given, told, "what the port tells of is what the device was given");
      return told.filter((text) => text !== "(stop)");
    }
    await sleep(50);
  }
  throw new Error(`less was said: ${JSON.stringify(await hand.run("return window.told"))}`);
}

/** What the undo bar shows of an answer that was heard with its number. */
async function answerOf(hand, heard) {
  const shown = await hand.textOf('[role="status"] strong');
  assert.ok(shown.endsWith(`: ${heard.replace(/^\d+: /, "")}`), `${shown} after ${heard}`);
  return shown;
}

test("three items are read in order, answered with two keys, spoken back and taken back", { timeout: 120_000 }, async (t) => {
  const { hand } = await examination(t, { script: withVoice });
  const look = pictures(hand);
  await hand.tap('[data-test="aloud"]');
  const [first, how, ...options] = await told(hand, 6);
  assert.match(first, /^Item 2 of \d+\. /);
  assert.ok(first.endsWith(await question(hand)) && how.length > 10);
  assert.match(options[0], /^1: /);
  assert.match(options[1], /^2: /);
  await look("aloud");

  // A key by itself records nothing.
  await press(hand, "AudioVolumeDown");
  assert.equal((await told(hand, 6))[0], first);

  // Up reads, down records: spoken back, and the next item follows.
  await press(hand, "AudioVolumeUp");
  assert.deepEqual(await told(hand, 1), [options[0]]);
  await look("aloud-read");
  await press(hand, "AudioVolumeDown");
  const second = await told(hand, 5);
  assert.equal(second[0], `Recorded. ${await answerOf(hand, options[0])}`);
  assert.match(second[1], /^Item 3 of /);
  await look("aloud-undo");

  // Both keys at once, as a grip presses them, mean nothing.
  await sleep(400);
  await hand.run('for (const key of ["AudioVolumeUp", "AudioVolumeDown"]) window.dispatchEvent(new KeyboardEvent("keydown", { key }))');
  assert.equal((await told(hand, 1)).length, 1, "only the first of the two is heard");
  assert.match(await question(hand), new RegExp(`^${second[1].replace(/^Item 3 of \d+\. /, "").replace(/[?.]/g, "\\$&")}$`));

  // On a desk, the keys of a page do the same.
  await sleep(350);
  await hand.page.keyboard.press("PageUp");
  const [taken] = await told(hand, 1);
  assert.match(taken, /^2: /);
  await sleep(350);
  await hand.page.keyboard.press("PageDown");
  const third = await told(hand, 5);
  assert.match(third[0], /^Recorded\. /);
  assert.match(third[1], /^Item 4 of /);

  // The same key, before anything else was read, takes back what was just recorded.
  await press(hand, "AudioVolumeDown");
  const back = await told(hand, 5);
  assert.equal(back[0], "Taken back");
  assert.equal(back[1], second[1]);

  // A touch silences at once.
  await hand.tap('[data-test="exam-skip"]');
  assert.ok((await hand.run("return window.given")).includes("(stop)"));
  await hand.tap('[data-test="tab-timeline"]');
  const lines = hand.page.locator('[data-test="line"][data-kind="examined"]');
  await lines.nth(1).waitFor();
  const retracted = await lines.evaluateAll((all) => all.map((one) => one.classList.contains("retracted")));
  assert.deepEqual(retracted, [false, true], "one answer stands, and one was taken back");
  assert.deepEqual(hand.problems, []);
});

test("a changed answer that is taken back by key is again what it was", { timeout: 120_000 }, async (t) => {
  const { hand } = await examination(t, { script: withVoice });
  await hand.tap('[data-test^="option-"]');
  await hand.tap('[data-test="aloud"]');
  await sleep(SETTLED_MS);
  await hand.tap('[data-test="exam-back"]');
  const before = await hand.page.locator('[data-test^="option-"][aria-pressed="true"]').innerText();
  await press(hand, "AudioVolumeUp");
  await press(hand, "AudioVolumeUp");
  await press(hand, "AudioVolumeDown");
  await hand.page.locator('[data-test="undo"]').waitFor();
  await press(hand, "AudioVolumeDown");
  await hand.page.locator('[data-test^="option-"][aria-pressed="true"]', { hasText: before }).waitFor();
  assert.deepEqual(hand.problems, []);
});

test("an answer that is not on disk is said to be not saved", { timeout: 120_000 }, async (t) => {
  const { hand } = await examination(t, { script: withVoice });
  await hand.tap('[data-test="aloud"]');
  await told(hand, 6);
  let refuse = true;
  await hand.page.route("**/call", (route) => {
    const error = { code: "not_saved", message: { id: "error-not-saved" } };
    const refused = refuse && route.request().postData().includes('"record"');
    return refused ? route.fulfill({ status: 422, contentType: "application/json", body: JSON.stringify(error) }) : route.continue();
  });
  await press(hand, "AudioVolumeUp");
  await told(hand, 1);
  const asked = await question(hand);
  await press(hand, "AudioVolumeDown");
  assert.deepEqual(await told(hand, 1), [`Not saved. ${asked}`]);
  assert.equal(await question(hand), asked, "and the item stays");
  refuse = false;
  await hand.tap('[data-test="not-saved-again"]');
  await hand.page.locator('[data-test="not-saved"]').waitFor({ state: "detached" });
  assert.deepEqual(hand.problems, []);
});

test("a device without a voice or a recorder says so, and the rest works", { timeout: 120_000 }, async (t) => {
  const { hand } = await examination(t, { script: () => delete window.MediaRecorder });
  await hand.find('[data-test="aloud-none"]');
  await hand.find('[data-test="voice-none"]');
  assert.equal(await hand.has('[data-test="aloud"], [data-test="voice-begin"]'), false);
  const asked = await question(hand);
  await hand.tap('[data-test^="option-"]');
  await until("the next question", async () => (await question(hand)) !== asked);
  await pictures(hand)("nothing");
  assert.deepEqual(hand.problems, []);
});

test("a microphone that may not be used is told with what to do", { timeout: 120_000 }, async (t) => {
  const refuse = () => {
    navigator.mediaDevices.getUserMedia = () => Promise.reject(new DOMException("", window.why ?? "NotAllowedError"));
  };
  const { hand } = await examination(t, { script: refuse });
  for (const [why, said] of [["NotAllowedError", "is not permitted"], ["NotFoundError", "no microphone"], ["NotReadableError", "does not answer"]]) {
    await hand.run(`window.why = "${why}"`);
    await hand.tap('[data-test="voice-begin"]');
    await hand.page.locator('[data-test="voice-problem"]', { hasText: said }).waitFor();
  }
  await pictures(hand)("not-permitted");
  assert.equal(await hand.has('[data-test="voice-bar"]'), false);
  assert.deepEqual(hand.problems, []);
});

/** Speaks over two items: some seconds on the first, a pause, and some on the second. */
async function speak(hand, look = async () => {}) {
  await hand.tap('[data-test="voice-begin"]');
  await hand.find('[data-test="voice-keep"]');
  await sleep(2_500);
  await look("recording");
  await hand.tap('[data-test="exam-skip"]');
  await sleep(1_500);
  await hand.tap('[data-test="voice-pause"]');
  await hand.page.locator('[data-test="voice-bar"]', { hasText: "Paused" }).waitFor();
  await look("paused");
  await sleep(1_500);
  await hand.tap('[data-test="voice-pause"]');
  await sleep(1_000);
  await hand.tap('[data-test="voice-keep"]');
}

// What every recording begins with. Each is longer than the four bytes that the random fill of the reserve holds by chance.
const OPUS = ["OpusHead", "A_OPUS", "\x42\x82\x84webm"].map((text) => Buffer.from(text, "latin1"));

function everyFile(folder) {
  return readdirSync(folder, { recursive: true, withFileTypes: true }).filter((file) => file.isFile()).map((file) => join(file.parentPath, file.name));
}

test("a note of two chapters is sealed, listened to after the next unlocking, and written up", { timeout: 240_000 }, async (t) => {
  const { hand, folder } = await examination(t);
  const look = pictures(hand);
  await speak(hand, look);
  await hand.page.locator('[data-test="undo"]').waitFor();
  await look("kept");

  // Nothing of the recording lies in plain.
  const files = everyFile(folder);
  const sealed = files.filter((file) => file.includes("/practice/files/"));
  assert.equal(sealed.length, 1);
  assert.ok(readFileSync(sealed[0]).subarray(0, 21).equals(Buffer.from("age-encryption.org/v1")));
  for (const file of files) {
    for (const plain of OPUS) assert.equal(readFileSync(file).includes(plain), false, `${plain} in ${file}`);
  }

  // The record says that it waits, on screen and in print, and can be signed all the same.
  await hand.tap('[data-test="tab-timeline"]');
  await hand.page.locator('[data-test="line"][data-kind="voice_noted"]', { hasText: "not yet written up" }).waitFor();
  await hand.tap('[data-test="tab-record"]');
  await hand.page.locator('[data-test="record-to-write-up"]', { hasText: "One voice note is not yet written up" }).waitFor();
  await hand.tap('[data-test="sign"]');
  await hand.page.locator('[data-test="signed-state"]', { hasText: "Signed. Nothing was written since." }).waitFor();
  const path = await writeFile(hand, "record");
  const printed = execFileSync("pdftotext", ["-layout", path, "-"], { encoding: "utf8" }).replace(/\s+/g, " ");
  assert.match(printed, /Voice note at the examination, \d+ s, not yet written up/);
  assert.match(printed, /One voice note is not yet written up/);
  await look("record");

  await hand.tap('[data-test="back"]');
  await hand.tap('[data-test="menu"]');
  await hand.tap('[data-test="lock"]');
  await hand.type('[data-test="passphrase"]', PASSPHRASE);
  await hand.tap('[data-test="unlock"]');
  await hand.page.locator('[data-test="to-write-up"]', { hasText: "One voice note to write up" }).waitFor();
  await look("births");
  await hand.tap('[data-test="to-write-up"]');
  await look("list");
  await hand.tap('[data-test="voice-line"]');
  await hand.find('[data-test="voice-play"]');
  assert.equal(await hand.has('[data-test="voice-chapter-2"]'), false);

  // It plays, and a chapter is a place to jump to.
  await hand.tap('[data-test="voice-play"]');
  const position = () => hand.page.locator('[data-test="voice-audio"]').evaluate((audio) => audio.currentTime);
  await until("it plays", async () => (await position()) >= 0.3);
  const at = await hand.textOf('[data-test="voice-chapter-1"] bdi');
  await hand.tap('[data-test="voice-chapter-1"]');
  await sleep(400);
  const jumped = await position();
  const begins = Number(at.split(":")[1]);
  assert.ok(begins >= 2 && jumped >= begins && jumped < begins + 3, `${jumped} s after a jump to ${at}`);
  await look("write-up");
  await hand.type('[data-test="write-up-text"]', "Chorion ragged along one edge.");
  await hand.tap('[data-test="write-up-done"]');
  await hand.find('[data-test="to-write-up-none"]');
  await hand.tap('[data-test="sheet-close"]');
  await hand.page.locator('[data-test="to-write-up"]').waitFor({ state: "detached" });

  await hand.tap('[data-test="birth"]');
  await hand.tap('[data-test="tab-timeline"]');
  await hand.page.locator('[data-test="line"][data-kind="written_up"]', { hasText: "Chorion ragged along one edge." }).waitFor();
  await hand.page.locator('[data-test="line"][data-kind="voice_noted"]', { hasText: /written up \d/ }).waitFor();
  await hand.tap('[data-test="tab-record"]');
  await hand.page.locator('[data-test="record-voices"]', { hasText: "Written up by Ida Lindqvist" }).waitFor();
  assert.equal(await hand.has('[data-test="record-to-write-up"]'), false);
  assert.deepEqual(hand.problems, []);
});

test("a note that could not be kept is told, stays, and can be tried again; one made by chance is taken back", { timeout: 120_000 }, async (t) => {
  const { hand, folder } = await examination(t);
  let full = true;
  await hand.page.route("**/call", (route) => {
    const refused = full && route.request().postData().includes('"file_part"');
    const error = { code: "not_saved", message: { id: "error-file-not-saved" } };
    return refused ? route.fulfill({ status: 422, contentType: "application/json", body: JSON.stringify(error) }) : route.continue();
  });
  await speak(hand);
  await hand.find('[data-test="not-saved"]');
  await pictures(hand)("not-saved");
  full = false;
  await hand.tap('[data-test="not-saved-again"]');
  await hand.tap('[data-test="undo"]');
  await hand.tap('[data-test="tab-timeline"]');
  await hand.page.locator('[data-test="line"][data-kind="voice_noted"].retracted').waitFor();
  assert.equal(everyFile(folder).filter((file) => file.includes("/practice/files/")).length, 1);
  await hand.tap('[data-test="back"]');
  await hand.find('[data-test="births"]');
  await sleep(500);
  assert.equal(await hand.has('[data-test="to-write-up"]'), false, "what was taken back waits for nobody");
  assert.deepEqual(hand.problems, []);
});

test("a note ends by itself at half an hour, and is kept", { timeout: 120_000 }, async (t) => {
  const script = () => localStorage.setItem("secundine-settings", JSON.stringify({ restAfter: 30, sound: false, vibration: false }));
  const { hand } = await examination(t, { script });
  await hand.tap('[data-test="voice-begin"]');
  await hand.find('[data-test="voice-keep"]');
  await sleep(6_500);
  await hand.run("const now = performance.now.bind(performance); performance.now = () => now() + (29 * 60 + 55) * 1000");
  await hand.page.locator('[data-test="voice-problem"]', { hasText: "limit of 30 minutes" }).waitFor();
  await hand.tap('[data-test="tab-timeline"]');
  await hand.page.locator('[data-test="line"][data-kind="voice_noted"]', { hasText: "30 min" }).waitFor();
  assert.deepEqual(hand.problems, []);
});

test("locking ends a note that runs, and keeps it", { timeout: 120_000 }, async (t) => {
  const { hand } = await examination(t);
  await hand.tap('[data-test="voice-begin"]');
  await hand.find('[data-test="voice-keep"]');
  await sleep(2_000);
  await hand.tap('[data-test="tab-stage"]');
  await hand.tap('[data-test="more"]');
  await hand.tap('[data-test="menu"]');
  await hand.tap('[data-test="lock"]');
  await hand.type('[data-test="passphrase"]', PASSPHRASE);
  await hand.tap('[data-test="unlock"]');
  await hand.tap('[data-test="birth"]');
  await hand.tap('[data-test="tab-timeline"]');
  await hand.page.locator('[data-test="line"][data-kind="voice_noted"]').waitFor();
  assert.deepEqual(hand.problems, []);
});
