// What keeps a practice: its recovery sheet, its backups, a damaged store and a disk that refuses.

import assert from "node:assert/strict";
import { readFileSync, readdirSync, rmSync } from "node:fs";
import { after, before, test } from "node:test";
import { setTimeout as sleep } from "node:timers/promises";

import { PASSPHRASE, createPractice } from "./birth.mjs";
import { Phone, emptyPhone, launch, picturesIn, startBridge, until } from "./browser.mjs";
import { at, call, note } from "./core.mjs";
import { damage, hold, limitFiles } from "./device.mjs";

let browser;
before(async () => {
  browser = await launch();
});
after(() => browser.close());

const looker = picturesIn("keeping");

async function toPractice(hand) {
  await hand.tap('[data-test="menu"]');
  await hand.tap('[data-test="practice"]');
}

/** Waits for so many births in the list. */
async function countsBirths(hand, count) {
  await until(`${count} births`, async () => (await at(hand, "birth").count()) === count);
}

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
  assert.ok(words.every((word) => /^[a-z]{3,}$/.test(word)), words.join(" "));

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
  const far = await hand.hold("backups");
  await hand.tap('[data-test="backup-make"]');
  await at(hand, "backup-going").waitFor();
  await look("backup-going");
  await far.all();
  await at(hand, "backup-made").waitFor();
  assert.match(await hand.textOf('[data-test="backup-made"]'), /2 births, \d+ entries, \d+ kB/);
  const file = readFileSync((await hand.textOf('[data-test="backup-path"]')).trim());
  assert.ok(file.length > 0 && !file.includes("Mill Lane"), "sealed");
  await until("it stands in the list", async () => (await at(hand, "backups-list").locator("li").count()) === 1);
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
  await at(hand, "band-elsewhere").waitFor({ state: "detached" });
  assert.deepEqual(hand.problems, []);
});

test("a damaged store is read as it is, then built anew, and written on", { timeout: 120_000 }, async (t) => {
  const { folder, bridge, hand } = await emptyPhone(t, browser);
  await createPractice(hand);
  const { birth } = await call(hand, { request: "register_birth", label: "House 1" });
  for (let line = 0; line < 90; line += 1) await note(hand, birth, `Line ${line}. ${"Quiet. ".repeat(40)}`);
  await call(hand, { request: "lock" });
  await bridge.stop();
  damage(`${folder}/practice`);

  // A page in the middle of a birth shows only once the birth is read: the way out is told there.
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
  assert.ok(read === 1 && entries > 60 && missing >= 1, `${read} births, ${entries} entries, ${missing} missing`);
  await back.tap('[data-test="salvaged-done"]');
  await at(back, "strip").waitFor({ state: "detached" });
  await back.tap('[data-test="baby-born"]');
  await back.find('[data-test="mark-cord_clamped"]');
  assert.deepEqual(back.problems, []);
});
