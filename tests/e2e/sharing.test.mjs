// Two phones share by a folder: one begins, the other joins by codes, both have one record, and one is removed.

import assert from "node:assert/strict";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { after, before, test } from "node:test";

import { PASSPHRASE, createPractice } from "./birth.mjs";
import { emptyPhone, launch, picturesIn } from "./browser.mjs";
import { at, backUp, call } from "./core.mjs";
import { hold } from "./device.mjs";
import { photographed } from "./phones.mjs";
import { camera, photograph } from "./photograph.mjs";
import { exchange, freshPhone, joined, toSharing, tryFolder, wordsOf } from "./sharing.mjs";

const pictures = picturesIn("sharing");
let browser;
before(async () => {
  browser = await launch();
});
after(() => browser.close());

/** Two phones with a practice each, a place where they may share, and what takes pictures of each. */
async function two(t) {
  const place = mkdtempSync(join(tmpdir(), "secundine-place-"));
  t.after(() => rmSync(place, { recursive: true, force: true }));
  const { hand: lead } = await emptyPhone(t, browser);
  await createPractice(lead);
  const { hand: other, end } = await freshPhone(browser, "Mara Quill");
  t.after(end);
  const [seenLead, seenOther] = [pictures(lead), pictures(other)];
  return { place, lead, other, seenLead, seenOther };
}

test("a phone begins to share, another joins by codes, a birth comes over, and the other is removed", async (t) => {
  const { place, lead, other, seenLead, seenOther } = await two(t);

  await toSharing(lead);
  await seenLead("ways");
  await lead.tap('[data-test="sharing-begin"]');
  await tryFolder(lead, join(place, "nowhere"));
  assert.equal(await lead.has('[data-test="sharing-found"]'), false, "a place that is not there is not begun in");
  await tryFolder(lead, place);
  await seenLead("tried");
  await lead.tap('[data-test="sharing-found"]');
  const sheet = (await lead.textOf('[data-test="recovery-identity"]')).trim();
  assert.match(sheet, /^AGE-SECRET-KEY-1/);
  await seenLead("sheet");
  await lead.type('[data-test="recovery-check"]', sheet.slice(-4));
  await lead.tap('[data-test="recovery-done"]');
  await lead.find('[data-test="sharing-state"]');

  await toSharing(other);
  await other.tap('[data-test="sharing-join"]');
  await other.find('[data-test="qr"]');
  await seenOther("card");

  await lead.tap('[data-test="sharing-members"]');
  await lead.tap('[data-test="admit-begin"]');
  await lead.find('[data-test="code-input"]');
  await photographed(other, lead);
  await lead.find('[data-test="admit-who"]');
  assert.equal(await lead.textOf('[data-test="admit-who"]'), "Mara Quill");
  await seenLead("admit");
  await lead.tap('[data-test="admit"]');
  await lead.find('[data-test="words"]');
  await seenLead("welcome");
  await photographed(lead, other);
  await other.find('[data-test="join-same"]');
  await seenOther("words");
  const words = await wordsOf(lead);
  assert.equal(words.length, 4);
  assert.deepEqual(await wordsOf(other), words, "both say the same words");
  // Whoever says that they differ has joined nothing.
  await other.tap('[data-test="join-differ"]');
  await other.find('[data-test="code-input"]');
  assert.equal((await call(other, { request: "sync" })).shared, false);
  await photographed(lead, other);
  await other.tap('[data-test="join-same"]');
  await other.find('[data-test="joined"]');
  await seenOther("joined");
  await other.tap('[data-test="join-done"]');
  await lead.tap('[data-test="admit-done"]');

  await call(lead, { request: "register_birth", label: "Mill Lane" });
  await exchange(lead);
  await exchange(other);
  await other.page.reload();
  await other.find('[data-test="birth"]');
  assert.match(await other.textOf('[data-test="births"]'), /Mill Lane/);

  await toSharing(other);
  await other.find('[data-test="sharing-state"]');
  await seenOther("state");
  await exchange(lead);
  await toSharing(lead);
  await lead.tap('[data-test="sharing-members"]');
  await lead.find('[data-test="members"]');
  await seenLead("members");
  await at(lead, "member").filter({ hasText: "Mara Quill" }).locator('[data-test="member-open"]').tap();
  await seenLead("member");
  await lead.tap('[data-test="remove"]');
  await lead.find('[data-test="remove-do"]');
  await seenLead("remove");
  await hold(lead, "remove-do");
  await lead.find('[data-test="members-gone"]');
  await exchange(lead);

  await other.tap('[data-test="sharing-now"]');
  await other.find('[data-test="sharing-outside"]');
  await seenOther("removed");
  assert.deepEqual([...lead.problems, ...other.problems], []);
});

/** To the record of the one birth, where it can be erased. */
async function toErasing(hand) {
  await hand.anew();
  await hand.tap('[data-test="birth"]');
  await hand.tap('[data-test="tab-record"]');
  await hand.tap('[data-test="erase-open"]');
  await hand.find('[data-test="erase-do"]');
}

test("a photograph is fetched when it is wanted, a sheet brings the practice back, and two people erase a birth", async (t) => {
  const { place, lead, other, seenLead, seenOther } = await two(t);
  const sheet = await joined(lead, other, place);

  for (const name of ["baby-born", "mark-cord_clamped", "mark-placenta_born"]) await lead.tap(`[data-test="${name}"]`);
  await lead.find('[data-test="mark-membranes_born"]');
  await lead.tap('[data-test="tab-exam"]');
  await lead.tap('[data-test="photographs"]');
  await at(lead, "photo-input").setInputFiles(await photograph(lead, camera(0)));
  await lead.page.locator('[data-test="photo"] img').first().waitFor();
  await exchange(lead);
  await exchange(other);

  await other.anew();
  await other.tap('[data-test="birth"]');
  await other.tap('[data-test="tab-exam"]');
  await other.tap('[data-test="photographs"]');
  await other.tap('[data-test="photo"]');
  await other.find('[data-test="fetch-do"]');
  await seenOther("fetch");
  await other.tap('[data-test="fetch-do"]');
  await at(other, "fetch").waitFor({ state: "detached" });
  await other.page.locator(".picture img").last().waitFor();
  await seenOther("fetched");

  const { hand: third, end: endThird } = await freshPhone(browser, "Noor Haddad");
  t.after(endThird);
  await toSharing(third);
  await third.tap('[data-test="sharing-recover"]');
  await third.type('[data-test="recover-sheet"]', sheet);
  await tryFolder(third, place);
  await third.tap('[data-test="recover-do"]');
  await third.find('[data-test="sharing-state"]');
  await pictures(third)("recovered");
  const view = await exchange(third);
  assert.deepEqual([view.leads, view.members.length, view.troubles], [true, 3, []]);
  assert.equal((await call(third, { request: "births", skip: 0, take: 9 })).births.length, 1);

  const backup = await backUp(other);
  await toErasing(lead);
  await hold(lead, "erase-do");
  await lead.find('[data-test="erase-asked"]');
  await exchange(lead);
  await exchange(other);
  await toSharing(other);
  await other.find('[data-test="sharing-erasures"]');
  assert.match(await other.textOf('[data-test="erasure-asked"]'), /Ida Lindqvist/);
  await seenOther("erasure");
  assert.equal((await call(other, { request: "births", skip: 0, take: 9 })).births.length, 1, "one alone erases nothing");
  await toErasing(other);
  assert.match(await other.textOf('[data-test="erasure-asked"]'), /Ida Lindqvist/);
  await hold(other, "erase-do");
  await other.find('[data-test="erase-asked"]');
  for (const hand of [other, lead, third]) {
    const { erasures, troubles } = await exchange(hand);
    assert.deepEqual([erasures, troubles], [[], []]);
    assert.equal((await call(hand, { request: "births", skip: 0, take: 9 })).births.length, 0);
  }
  await toSharing(lead);
  await lead.find('[data-test="sharing-state"]');
  await seenLead("erased");

  // A backup from before does not bring it back, and says so.
  await other.anew();
  for (const step of ["menu", "practice", "backups", "backup-add"]) await other.tap(`[data-test="${step}"]`);
  await at(other, "restore-file").setInputFiles(backup);
  await other.type('[data-test="restore-passphrase"]', PASSPHRASE);
  await other.tap('[data-test="restore-do"]');
  assert.match(await other.textOf('[data-test="restored-refused"]'), /stay erased/);
  await seenOther("restored");
  await other.tap('[data-test="restored-done"]');
  assert.equal((await call(other, { request: "births", skip: 0, take: 9 })).births.length, 0);
  assert.deepEqual([...lead.problems, ...other.problems, ...third.problems], []);
});
