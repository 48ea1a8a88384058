// What keeps a practice: its recovery sheet, its backups, rest, a damaged store and a disk that refuses.

import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { mkdirSync, openSync, closeSync, readFileSync, readSync, readdirSync, rmSync, statSync, writeFileSync, writeSync } from "node:fs";
import { join, resolve } from "node:path";
import { after, before, test } from "node:test";
import { setTimeout as sleep } from "node:timers/promises";

import { PASSPHRASE, createPractice } from "./birth.mjs";
import { Phone, emptyPhone, launch, startBridge } from "./browser.mjs";

const out = resolve("out/keeping");
mkdirSync(out, { recursive: true });

let browser;
before(async () => {
  browser = await launch();
});
after(() => browser.close());

const looker = (hand) => async (name) => {
  await sleep(250);
  writeFileSync(join(out, `${name}.png`), await hand.page.screenshot({ fullPage: true }));
};

const at = (hand, name) => hand.page.locator(`[data-test="${name}"]`);

/** Holds a button for more than its second. */
async function hold(hand, name) {
  await at(hand, name).focus();
  await hand.page.keyboard.down("Enter");
  await sleep(1_300);
  await hand.page.keyboard.up("Enter");
}

async function toPractice(hand) {
  await hand.tap('[data-test="menu"]');
  await hand.tap('[data-test="practice"]');
}

/** Waits for so many births in the list. */
async function countsBirths(hand, count) {
  await at(hand, "birth").nth(count - 1).waitFor();
  assert.equal(await at(hand, "birth").count(), count);
}

/** Asks the core itself. */
async function call(hand, request) {
  const token = new URL(hand.page.url()).hash.slice("#token=".length);
  return hand.page.evaluate(
    async ([body, bearer]) => (await fetch("/call", { method: "POST", headers: { authorization: `Bearer ${bearer}` }, body })).json(),
    [JSON.stringify(request), token],
  );
}

const now = { at: "now", ago_ms: 0 };
const note = (hand, birth, text) => call(hand, { request: "record", birth, fact: { kind: "noted", data: { text } }, at: now });

test("the recovery sheet has its code and its words, prints black on white, and is known again when typed", { timeout: 60_000 }, async (t) => {
  const { hand } = await emptyPhone(t, browser);
  let words, look = looker(hand);
  const identity = await createPractice(hand, async (name) => {
    if (name !== "recovery") return;
    words = (await at(hand, "recovery-words").locator("li").allInnerTexts()).map((line) => line.replace(/\d/g, "").trim());
    const [box, path] = await at(hand, "qr").evaluate((svg) => [svg.getAttribute("viewBox"), svg.querySelector("path").getAttribute("d")]);
    const side = Number(box.split(" ")[2]) - 8;
    assert.ok(side >= 21 && (side - 17) % 4 === 0, `a code of ${side} modules`);
    assert.match(path, /^M/);
    await look("recovery");
    await hand.run('document.documentElement.dataset.theme = "night"');
    await hand.page.emulateMedia({ media: "print" });
    const shown = await hand.page.evaluate(() => ({
      buttons: [...document.querySelectorAll("button, input")].filter((one) => one.getClientRects().length > 0).length,
      colours: [getComputedStyle(document.documentElement).backgroundColor, getComputedStyle(document.querySelector("h1")).color],
      text: document.body.innerText,
    }));
    assert.equal(shown.buttons, 0, "no control on paper");
    assert.deepEqual(shown.colours, ["rgb(255, 255, 255)", "rgb(0, 0, 0)"]);
    for (const one of ["Harbour Midwives", "Ida Lindqvist", ...words]) assert.ok(shown.text.includes(one), `${one} on paper`);
    await hand.page.emulateMedia({ media: "screen" });
    await hand.run('document.documentElement.dataset.theme = "day"');
  });
  assert.equal(words.length, 4);
  assert.equal(new Set(words.map((word) => word.length > 2)).has(false), false, words.join(" "));

  await toPractice(hand);
  await hand.tap('[data-test="keys"]');
  await at(hand, "way-recovery").waitFor();
  await hand.tap('[data-test="keys-check"]');
  await hand.type('[data-test="check-identity"]', identity.toLowerCase().replace(/(.{5})/g, "$1 "));
  await hand.tap('[data-test="check-do"]');
  assert.equal(await hand.textOf('[data-test="check-words"]'), words.join(" "));
  assert.equal(await at(hand, "check-found").getAttribute("data-opens"), "true");
  const last = identity.at(-1) === "Q" ? "P" : "Q";
  await hand.type('[data-test="check-identity"]', identity.slice(0, -1) + last);
  await hand.tap('[data-test="check-do"]');
  await at(hand, "check-wrong").waitFor();
  await look("keys");

  // Taken out, it opens nothing.
  await hand.tap('[data-test="keys-revoke-recovery"]');
  await hand.type('[data-test="revoke-recovery-passphrase"]', PASSPHRASE);
  await hold(hand, "revoke-recovery-do");
  await at(hand, "keys-done").waitFor();
  await at(hand, "way-recovery").waitFor({ state: "detached" });
  await hand.tap('[data-test="keys-check"]');
  await hand.type('[data-test="check-identity"]', identity);
  await hand.tap('[data-test="check-do"]');
  await at(hand, "check-found").waitFor();
  assert.equal(await at(hand, "check-found").getAttribute("data-opens"), "false");
  assert.deepEqual(hand.problems, []);
});

test("a backup brings everything back after all was destroyed", { timeout: 90_000 }, async (t) => {
  const { folder, bridge, hand } = await emptyPhone(t, browser);
  const look = looker(hand);
  await createPractice(hand);
  for (const label of ["Mill Lane", "Quay Street"]) {
    const { birth } = await call(hand, { request: "register_birth", label });
    await note(hand, birth, `At ${label}`);
  }
  await toPractice(hand);
  assert.match(await hand.textOf('[data-test="backup-age"]'), /No backup yet/);
  await hand.tap('[data-test="backups"]');
  await at(hand, "backups-none").waitFor();
  await hand.tap('[data-test="backup-make"]');
  await at(hand, "backup-made").waitFor();
  assert.match(await hand.textOf('[data-test="backup-made"]'), /2 births, \d+ entries, \d+ kB/);
  const file = readFileSync((await hand.textOf('[data-test="backup-path"]')).trim());
  assert.ok(file.length > 0 && !file.includes("Mill Lane"), "sealed");
  assert.equal(await at(hand, "backups-list").locator("li").count(), 1);
  await look("backups");
  await hand.tap('[data-test="backups-back"]');
  await hand.page.locator("[data-test=backup-age]", { hasText: "today" }).waitFor();

  await hand.tap('[data-test="keys"]');
  await hand.tap('[data-test="keys-wipe"]');
  await hand.type('[data-test="wipe-passphrase"]', PASSPHRASE);
  await hand.type('[data-test="keys-name"]', "Harbour Midwives");
  await hold(hand, "wipe-do");
  await hand.tap('[data-test="restore"]');
  const choose = (name, buffer) => at(hand, "restore-file").setInputFiles({ name, mimeType: "application/octet-stream", buffer });
  await choose("holiday.jpg", Buffer.alloc(3_000_000, 7));
  await hand.type('[data-test="restore-passphrase"]', PASSPHRASE);
  await hand.tap('[data-test="restore-do"]');
  await at(hand, "restore-wrong").waitFor();
  await choose("kept.tar", file);
  await hand.type('[data-test="restore-passphrase"]', "something else");
  await hand.tap('[data-test="restore-do"]');
  await hand.page.locator("[data-test=restore-wrong]", { hasText: "passphrase" }).waitFor();
  assert.equal(await at(hand, "restore-passphrase").inputValue(), "something else", "what was typed stays");
  await look("restore");
  await hand.type('[data-test="restore-passphrase"]', PASSPHRASE);
  await hand.tap('[data-test="restore-do"]');
  await at(hand, "restored").waitFor();
  await look("restored");
  await hand.tap('[data-test="restored-done"]');
  await hand.page.locator("[data-test=births]", { hasText: "Mill Lane" }).waitFor();
  await countsBirths(hand, 2);

  // Added once more to what is there, it brings nothing new.
  await toPractice(hand);
  await hand.tap('[data-test="backups"]');
  await hand.tap('[data-test="backup-add"]');
  await choose("kept.tar", file);
  await hand.type('[data-test="restore-passphrase"]', PASSPHRASE);
  await hand.tap('[data-test="restore-do"]');
  await at(hand, "restored").waitFor();
  const figures = await at(hand, "restored").locator("td").allInnerTexts();
  assert.deepEqual(figures.map(Number).slice(0, 2), [0, 0], figures.join());
  await hand.tap('[data-test="restored-done"]');
  await countsBirths(hand, 2);
  assert.deepEqual(hand.problems, []);

  // Without its keys nothing here opens, but the backup brings them back.
  const { births } = await call(hand, { request: "births", skip: 0, take: 1 });
  await note(hand, births[0].birth, "Written after the restore");
  await bridge.stop();
  for (const name of readdirSync(`${folder}/practice`).filter((one) => one.endsWith(".age"))) rmSync(`${folder}/practice/${name}`);
  const again = await startBridge(folder);
  t.after(() => again.stop());
  const back = await Phone.open(browser, again.address);
  await at(back, "keys-missing").waitFor();
  await looker(back)("keys-missing");
  await back.tap('[data-test="restore"]');
  await at(back, "restore-file").setInputFiles({ name: "kept.tar", mimeType: "application/x-tar", buffer: file });
  await back.type('[data-test="restore-passphrase"]', PASSPHRASE);
  await back.tap('[data-test="restore-do"]');
  await back.tap('[data-test="restored-done"]');
  await countsBirths(back, 2);
  assert.deepEqual(back.problems, []);
});

const CANARIES = [
  "Zephyrine Quillfeather", "Marrowgate Cottage", "zinc-oxide-tape", "Blue door, brass knocker", "Aunt Philomela is here",
  "Her sister Ottoline drives", "Fenugreek in the tea", "Oxytocinum Korvelius", "Vastus lateralis sinister", "Tangerine towel",
  "Dog Balthasar barks", "Harbour Midwives", "Ida Lindqvist",
];

/** Everything that the page and the browser hold of it, as one text. */
function held() {
  const values = [...document.querySelectorAll("input, textarea")].map((one) => one.value);
  const kept = async () => {
    const bases = (await indexedDB.databases?.()) ?? [];
    const caches_ = "caches" in window ? await caches.keys() : [];
    return [...bases.map((base) => base.name), ...caches_];
  };
  return kept().then((names) => ({
    page: [document.documentElement.innerHTML, document.title, location.href, JSON.stringify(history.state)].join("\n"),
    stores: [JSON.stringify({ ...localStorage }), JSON.stringify({ ...sessionStorage }), document.cookie, names.join()].join("\n"),
    values: values.join("\n"),
    counts: names.length,
  }));
}

function holdsNone(text, where) {
  assert.deepEqual(CANARIES.filter((name) => text.includes(name)), [], where);
}

test("rest hides every name while a third stage runs, and locks when none does", { timeout: 120_000 }, async (t) => {
  const { bridge, hand: first } = await emptyPhone(t, browser);
  await first.page.context().close();
  const hand = await Phone.open(browser, bridge.address, { clock: true });
  const look = looker(hand);
  await createPractice(hand);

  // No third stage: after five minutes it locks.
  await hand.page.clock.fastForward(4 * 60_000 + 50_000);
  await sleep(300);
  assert.equal(await at(hand, "baby-born").count(), 1, "not before its time");
  await hand.page.clock.fastForward(15_000);
  await at(hand, "locked-baby-born").waitFor();
  holdsNone((await hand.page.evaluate(held)).page, "locked");
  await hand.type('[data-test="passphrase"]', PASSPHRASE);
  await hand.tap('[data-test="unlock"]');

  await hand.tap('[data-test="baby-born"]');
  await hand.find('[data-test="mark-cord_clamped"]');
  const { births } = await call(hand, { request: "births", skip: 0, take: 1 });
  const { birth } = births[0];
  const record = (kind, data) => call(hand, { request: "record", birth, fact: { kind, data }, at: now });
  const [mother, place, allergy, ...rest] = CANARIES;
  const answers = [
    await record("client_recorded", { name: mother, born: "1994-02-17", gravida: 2, para: 1, gestation: 281, blood_group: "O neg", allergies: allergy }),
    await record("noted", { text: place }),
    await record("medicine_given", { name: rest[4], dose: "10 IU", route: rest[5], uterotonic: true }),
    await record("blood_loss", { method: "weighed", item: rest[6], gross: 300, dry: 100 }),
  ];
  for (const text of [rest[0], rest[1], rest[2], rest[3]]) answers.push(await note(hand, birth, text));
  assert.deepEqual(answers.filter((answer) => !answer.entry), [], "planted");
  await hand.tap('[data-test="tab-record"]');
  await hand.page.locator("main", { hasText: mother }).first().waitFor();
  await hand.tap('[data-test="tab-timeline"]');
  await hand.page.locator("[data-test=timeline]", { hasText: rest[3] }).waitFor();
  const seen = (await hand.page.evaluate(held)).page;
  assert.ok(CANARIES.filter((name) => seen.includes(name)).length >= 9, "they stood on the page");
  await hand.tap('[data-test="tab-stage"]');

  // A note is being typed when it rests.
  await hand.tap('[data-test="more"]');
  await hand.tap('[data-test="enter-noted"]');
  await hand.type('[data-test="note-text"]', rest[7]);
  await hand.page.clock.fastForward(5 * 60_000 + 3_000);
  await at(hand, "show-names").waitFor();
  await at(hand, "clock").waitFor();
  await sleep(500);
  const hidden = await hand.page.evaluate(held);
  holdsNone(hidden.page, "hidden: page");
  holdsNone(hidden.stores, "hidden: stores");
  assert.equal(hidden.counts, 0, "no database and no cache of the browser");
  holdsNone(await hand.text(), "hidden: to be read");
  assert.equal(await at(hand, "note-text").isVisible(), false);
  assert.equal(await at(hand, "tab-record").count(), 0, "what would be refused is not offered");
  await look("hidden");
  await hand.tap('[data-test="mark-cord_clamped"]');
  await hand.page.locator("[role=status]", { hasText: "Cord clamped" }).waitFor();

  await hand.tap('[data-test="show-names"]');
  await hand.type('[data-test="names-passphrase"]', PASSPHRASE);
  await hand.tap('[data-test="names-do"]');
  await hand.page.locator("[data-test=note-text]").waitFor();
  assert.equal(await at(hand, "note-text").inputValue(), rest[7], "what was being typed is kept");
  await hand.tap('[data-test="save"]');
  await at(hand, "note-text").waitFor({ state: "detached" });
  await hand.page.locator("[data-test=who]", { hasText: mother }).waitFor();

  // The third stage ends: now it locks, and nothing of the birth stays under the lock.
  await record("placenta_born", { babies: [1] });
  await hand.tap('[data-test="more"]');
  await hand.tap('[data-test="enter-noted"]');
  await hand.type('[data-test="note-text"]', rest[8]);
  await hand.page.clock.fastForward(5 * 60_000 + 3_000);
  await at(hand, "passphrase").or(at(hand, "locked-unlock")).first().waitFor();
  const locked = await hand.page.evaluate(held);
  holdsNone(locked.page + locked.stores + locked.values, "locked");
  assert.equal(await at(hand, "who").count(), 0);
  await look("locked");
  await hand.type('[data-test="passphrase"]', PASSPHRASE);
  await hand.tap('[data-test="unlock"]');
  await hand.page.locator("[data-test=who]", { hasText: mother }).waitFor();
  assert.deepEqual(hand.problems, []);
});

test("a rehearsal never rests", { timeout: 60_000 }, async (t) => {
  const { bridge, hand: first } = await emptyPhone(t, browser);
  await first.page.context().close();
  const hand = await Phone.open(browser, bridge.address, { clock: true });
  await createPractice(hand);
  await hand.tap('[data-test="menu"]');
  await hand.tap('[data-test="rehearse"]');
  await hand.tap('[data-test="rehearse-watch"]');
  await hand.tap('[data-test="rehearse-start"]');
  await at(hand, "strip").first().waitFor();
  const asked = [];
  hand.page.on("request", (request) => asked.push(request.postDataJSON()?.request));
  await hand.page.clock.fastForward(40 * 60_000);
  await sleep(1_500);
  assert.ok(asked.includes("status") && !asked.includes("rest"), asked.join());
  assert.ok((await at(hand, "strip").count()) > 0);
  assert.equal((await call(hand, { request: "status" })).door, "open");
});

/** From here on the system refuses every write past so many bytes into a file; `unlimited` lifts it. */
function limitFiles(bridge, bytes) {
  execFileSync("prlimit", ["--pid", String(bridge.pid), `--fsize=${bytes}:unlimited`]);
}

test("what the disk refuses is kept elsewhere and comes into the chart at the next unlocking", { timeout: 60_000 }, async (t) => {
  const { bridge, hand } = await emptyPhone(t, browser);
  const look = looker(hand);
  await createPractice(hand);
  await hand.tap('[data-test="baby-born"]');
  await hand.find('[data-test="mark-cord_clamped"]');
  limitFiles(bridge, 4096);
  await sleep(1_500);
  await hand.tap('[data-test="mark-cord_clamped"]');
  await at(hand, "not-saved-elsewhere").waitFor();
  await look("not-saved");
  await hand.tap('[data-test="not-saved-elsewhere"]');
  await hand.page.locator("[data-test=not-saved]", { hasText: "Kept elsewhere" }).waitFor();
  await look("kept-elsewhere");
  await hand.tap('[data-test="not-saved-dismiss"]');

  // A sheet can go there too.
  await hand.tap('[data-test="more"]');
  await hand.tap('[data-test="enter-noted"]');
  await hand.type('[data-test="note-text"]', "Father holds the lamp");
  await sleep(700); // Four touches in half a second would be taken for water.
  await hand.tap('[data-test="save"]');
  await at(hand, "sheet-elsewhere").waitFor();
  await look("sheet-elsewhere");
  await hand.tap('[data-test="sheet-elsewhere"]');
  await at(hand, "note-text").waitFor({ state: "detached" });
  assert.match(await hand.textOf('[data-test="band-elsewhere"]'), /2 entries/);
  await look("elsewhere");
  await hand.tap('[data-test="tab-timeline"]');
  assert.doesNotMatch(await hand.textOf('[data-test="timeline"]'), /Cord clamped|lamp/);
  await hand.page.evaluate(() => window.scrollTo(0, 0));
  limitFiles(bridge, "unlimited");
  await hand.tap('[data-test="elsewhere-lock"]');
  await hand.tap('[data-test="locked-unlock"]');
  await hand.type('[data-test="passphrase"]', PASSPHRASE);
  await hand.tap('[data-test="unlock"]');
  await at(hand, "drained-done").waitFor();
  await hand.tap('[data-test="drained-done"]');
  await hand.tap('[data-test="birth"]');
  await hand.tap('[data-test="tab-timeline"]');
  for (const what of ["Cord clamped", "Father holds the lamp"]) await hand.page.locator("[data-test=timeline]", { hasText: what }).waitFor();
  assert.equal(await at(hand, "band-elsewhere").count(), 0);
  assert.deepEqual(hand.problems, []);
});

/** Overwrites a part of one page of the database: the one in the middle, unless told. */
function damage(folder, page) {
  const name = readdirSync(folder).find((file) => file.endsWith(".db"));
  const path = join(folder, name);
  const pages = statSync(path).size / 4096;
  assert.ok(pages > 8, `${pages} pages`);
  const file = openSync(path, "r+");
  const bytes = Buffer.alloc(256);
  const place = (page ?? Math.floor(pages / 2)) * 4096 + 1024;
  readSync(file, bytes, 0, bytes.length, place);
  writeSync(file, bytes.map((byte) => byte ^ 0xff), 0, bytes.length, place);
  closeSync(file);
}

test("a damaged store is read as it is, then built anew, and written on", { timeout: 120_000 }, async (t) => {
  const { folder, bridge, hand } = await emptyPhone(t, browser);
  await createPractice(hand);
  for (let n = 1; n <= 12; n += 1) {
    const { birth } = await call(hand, { request: "register_birth", label: `House ${n}` });
    for (let line = 0; line < 6; line += 1) await note(hand, birth, `Line ${line} at house ${n}. ${"Quiet. ".repeat(40)}`);
  }
  await call(hand, { request: "lock" });
  await bridge.stop();
  damage(`${folder}/practice`);

  // A page in the middle shows only once it is read: the way out is told there.
  const begin = async () => {
    const again = await startBridge(folder);
    t.after(() => again.stop());
    const phone = await Phone.open(browser, again.address);
    await phone.type('[data-test="passphrase"]', PASSPHRASE);
    await phone.tap('[data-test="unlock"]');
    return { again, phone };
  };
  const { again, phone } = await begin();
  await phone.tap('[data-test="damaged-ways"]');
  await at(phone, "damaged").waitFor();
  await again.stop("SIGKILL");

  // The first page keeps the door shut.
  damage(`${folder}/practice`, 0);
  const { phone: back } = await begin();
  const look = looker(back);
  await at(back, "damaged").waitFor();
  await look("damaged");
  await back.tap('[data-test="damaged-read"]');
  await back.type('[data-test="read-passphrase"]', "not this one");
  await back.tap('[data-test="read-do"]');
  await at(back, "read-wrong").waitFor();
  await back.type('[data-test="read-passphrase"]', PASSPHRASE);
  await sleep(700); // Four touches in half a second would be taken for water.
  await back.tap('[data-test="read-do"]');
  await at(back, "salvaged").waitFor();
  await look("read-only-report");
  await back.tap('[data-test="salvaged-done"]');
  await at(back, "birth").first().waitFor();
  assert.match(await back.textOf('[data-test="strip"]'), /READ ONLY/);
  assert.equal(await at(back, "baby-born").count(), 0);
  await back.tap('[data-test="birth"]');
  await back.find('[data-test="mark-baby_born"]');
  assert.equal(await at(back, "mark-baby_born").isDisabled(), true);
  await look("read-only");
  const { births } = await call(back, { request: "births", skip: 0, take: 1 });
  assert.equal((await note(back, births[0].birth, "No room")).code, "read_only");
  await back.tap('[data-test="back"]');

  await back.tap('[data-test="salvage-report"]');
  await back.tap('[data-test="salvage-open"]');
  await back.type('[data-test="salvage-passphrase"]', PASSPHRASE);
  await hold(back, "salvage-do");
  await at(back, "salvage-aside").waitFor();
  await look("salvaged");
  const [read, entries, missing] = (await at(back, "salvaged").locator("td").allInnerTexts()).map(Number);
  assert.ok(read >= 10 && read <= 12 && entries > 60 && missing >= 1, `${read} births, ${entries} entries, ${missing} missing`);
  await back.tap('[data-test="salvaged-done"]');
  await at(back, "strip").waitFor({ state: "detached" });
  await back.tap('[data-test="baby-born"]');
  await back.find('[data-test="mark-cord_clamped"]');
  assert.deepEqual(back.problems, []);
});
