// Phones that share by a folder, each a device of its own.

import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";

import { PASSPHRASE } from "./birth.mjs";
import { Phone, startBridge } from "./browser.mjs";
import { at, call } from "./core.mjs";

/** Another phone with a practice of its own, whose person has this name; `end` takes it away. */
export async function freshPhone(browser, practitioner, size) {
  const folder = mkdtempSync(join(tmpdir(), "secundine-"));
  const bridge = await startBridge(folder);
  const hand = await Phone.open(browser, bridge.address, size);
  const practice = { name: "Quay Midwives", practitioner, role: "midwife", protocol: "nice-rcog" };
  await call(hand, { request: "create_practice", practice, passphrase: PASSPHRASE });
  await hand.page.reload();
  await hand.find('[data-test="baby-born"]');
  const end = async () => {
    await hand.page.context().close();
    await bridge.stop();
    rmSync(folder, { recursive: true, force: true });
  };
  return { hand, end };
}

/** To the screens of sharing, wherever the page is. */
export async function toSharing(hand) {
  await hand.anew();
  await hand.find('[data-test="baby-born"]');
  await hand.tap('[data-test="menu"]');
  await hand.tap('[data-test="practice"]');
  await hand.tap('[data-test="sharing"]');
  await hand.find('[data-test="sharing-back"]');
}

/** Types a folder as the place, and tries it. */
export async function tryFolder(hand, folder) {
  await hand.tap('[data-test="place-folder"]');
  await hand.type('[data-test="place-path"]', folder);
  await hand.tap('[data-test="place-try"]');
  await hand.find('[data-test="place-tried"]');
}

/** Exchanges by hand, and waits for its end. */
export async function exchange(hand) {
  await call(hand, { request: "sync_now", by_hand: true, metered: false });
  for (;;) {
    const view = await call(hand, { request: "sync" });
    if (view.state?.state !== "going") return view;
    await hand.page.waitForTimeout(100);
  }
}

/** The words that both have to show alike. */
export async function wordsOf(hand) {
  const words = at(hand, "words").locator("bdi");
  await words.first().waitFor();
  return words.allInnerTexts();
}

/** Brings both phones together without a hand: one leads, the other joins. Gives the identity on the practice's sheet. */
export async function joined(first, second, folder) {
  const { recovery } = await call(first, { request: "found_sync", place: { kind: "folder", path: folder } });
  const card = await call(second, { request: "sync_card" });
  const welcome = await call(first, { request: "admit_to_sync", code: card.text, role: "member" });
  await call(second, { request: "join_sync", code: welcome.text });
  await exchange(first);
  await exchange(second);
  await exchange(first);
  return recovery.identity;
}
