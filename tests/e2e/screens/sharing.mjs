// Sharing with the other phones of the practice: the ways in, how it stands, who is in it, and who was.

import assert from "node:assert/strict";
import { mkdtempSync, renameSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";

import { createPractice } from "../birth.mjs";
import { call } from "../core.mjs";
import { exchange, freshPhone, toSharing, tryFolder } from "../sharing.mjs";
import { record } from "./start.mjs";

/** Types a code, where there is no camera. */
async function typeCode(d, text) {
  await d.tap("code-type");
  await d.type("code-typed", text);
  await d.tap("code-use");
}

/** From now on the page is told this of how sharing stands, whatever it is; what it does is done. */
async function told(d, view) {
  await untold(d);
  await d.hand.page.route("**/call", async (route) => {
    const { request } = route.request().postDataJSON();
    if (!["sync", "sync_now"].includes(request)) return route.continue();
    const response = await route.fetch();
    return route.fulfill({ response, json: { ...(await response.json()), ...view } });
  });
}

const untold = (d) => d.hand.page.unrouteAll({ behavior: "ignoreErrors" });

const TROUBLES = [
  { said: { id: "sync-held", args: { whose: "Wilhelmina Featherstonehaugh-Lindqvist", many: 2 } }, held: { device: "0".repeat(32), segment: 4 } },
  { said: { id: "sync-rolled-back", args: { whose: { id: "sync-unknown-phone" } } }, held: null },
  { said: { id: "sync-altered", args: { name: "segment/6f2a9c0d1e8b7a5f6f2a9c0d1e8b7a5f/0000000000000012-d1e8b7a5f6f2a9c0" } }, held: null },
];

export const sharing = {
  ways: async (d) => {
    d.place = mkdtempSync(join(tmpdir(), "secundine-place-"));
    await createPractice(d.hand);
    await toSharing(d.hand);
    await d.find("sharing-recover");
  },
  recover: async (d) => {
    await d.tap("sharing-recover");
    await d.type("recover-sheet", "AGE-SECRET-KEY-1QQQQ");
    await tryFolder(d.hand, d.place);
    await d.tap("recover-do");
    await d.find("recover-failed");
  },
  "join-code": async (d) => {
    await d.tap("sharing-up");
    await d.tap("sharing-join");
    await d.find("qr");
  },
  "join-wrong-code": async (d) => {
    await typeCode(d, (await call(d.hand, { request: "sync_card" })).text);
    await d.find("code-error");
  },
  "place-s3": async (d) => {
    await d.tap("sharing-up");
    await d.tap("sharing-begin");
    await d.tap("place-s3");
    await d.tap("place-try");
    await d.find("place-error");
  },
  "place-web-dav": async (d) => {
    await d.tap("place-web_dav");
    await d.find("place-url");
  },
  "place-not-there": (d) => tryFolder(d.hand, join(d.place, "a-long-name-of-a-folder-that-is-not-there")),
  "place-well": async (d) => {
    await tryFolder(d.hand, d.place);
    await d.find("sharing-found");
  },
  sheet: async (d) => {
    await d.tap("sharing-found");
    await d.find("recovery-identity");
  },
  state: async (d) => {
    const identity = (await d.hand.textOf('[data-test="recovery-identity"]')).trim();
    await d.type("recovery-check", identity.slice(-4));
    await d.tap("recovery-done");
    await d.find("sharing-state");
    await exchange(d.hand);
  },
  going: async (d) => {
    await told(d, { state: { state: "going", sent: 18, to_send: 24, got: 1301, bytes: 3_482_119 }, waiting: 24, waiting_files: 3 });
    await d.find("sharing-going");
  },
  troubles: async (d) => {
    await told(d, { troubles: TROUBLES });
    await d.find("sharing-take-in");
    return () => untold(d);
  },
  "admit-read": async (d) => {
    const { hand, end } = await freshPhone(d.hand.page.context().browser(), "Wilhelmina Featherstonehaugh-Lindqvist");
    Object.assign(d, { second: hand, endSecond: end });
    await d.tap("sharing-members");
    await d.tap("admit-begin");
    await d.find("code-input");
  },
  admit: async (d) => {
    await typeCode(d, (await call(d.second, { request: "sync_card" })).text);
    await d.find("admit-who");
    await d.tap("role-student");
  },
  welcome: async (d) => {
    await d.tap("admit");
    await d.find("words");
    await d.tap("code-as-text");
    d.welcome = await d.hand.textOf('[data-test="code-text"]');
    await d.tap("code-as-text");
  },
  "join-words": async (d) => {
    // The page of the phone that joins.
    Object.assign(d, { lead: d.hand, hand: d.second });
    await toSharing(d.hand);
    await d.tap("sharing-join");
    await d.find("qr");
    await typeCode(d, d.welcome.trim());
    await d.find("join-same");
    return () => void (d.hand = d.lead);
  },
  members: async (d) => {
    await call(d.second, { request: "join_sync", code: d.welcome.trim() });
    await exchange(d.second);
    await exchange(d.hand);
    await d.tap("admit-done");
    await d.hand.page.locator('[data-test="member"]').nth(1).waitFor();
  },
  member: async (d) => {
    await d.hand.page.locator('[data-test="member"]', { hasText: "Wilhelmina" }).locator('[data-test="member-open"]').tap();
    await d.find("role-set");
  },
  remove: async (d) => {
    await d.tap("remove");
    await d.find("remove-do");
  },
  "members-gone": async (d) => {
    await d.hold("remove-do");
    await d.find("members-gone");
    await exchange(d.hand);
  },
  "place-change": async (d) => {
    await d.tap("sharing-up");
    await d.tap("sharing-place");
    await d.find("place-path");
  },
  waiting: async (d) => {
    await d.tap("sharing-up");
    renameSync(d.place, `${d.place}-away`);
    const { birth } = await call(d.hand, { request: "register_birth", label: "Mill Lane" });
    d.birth = birth;
    await d.tap("sharing-now");
    await d.find("sharing-failed");
  },
  paused: async (d) => {
    await d.tap("sharing-pause");
    await d.find("sharing-paused");
  },
  late: async (d) => {
    await told(d, { overdue: true, waiting: 12 });
    await d.hand.anew();
    await d.find("late-to-share");
    return () => untold(d);
  },
  "photo-absent": async (d) => {
    const data = { placenta: 1, file: "1f".repeat(32), small: "2e".repeat(32), width: 400, height: 300 };
    await record(d.hand, d.birth, "baby_born", { baby: 1 });
    await record(d.hand, d.birth, "placenta_born", { babies: [1] });
    await record(d.hand, d.birth, "photo_taken", data);
    await d.tap("birth");
    await d.tap("tab-exam");
    await d.tap("photographs");
    await d.find("photo");
  },
  fetch: async (d) => {
    await d.tap("photo");
    await d.find("fetch-do");
  },
  "fetch-failed": async (d) => {
    await d.tap("fetch-do");
    await d.find("fetch-failed");
  },
  "erase-open": async (d) => {
    renameSync(`${d.place}-away`, d.place);
    await d.hand.anew();
    await d.tap("birth");
    await d.tap("tab-record");
    await d.tap("erase-open");
    await d.find("erase-do");
  },
  "erase-asked": async (d) => {
    await d.hold("erase-do");
    await d.find("erase-asked");
  },
  erasures: async (d) => {
    await toSharing(d.hand);
    await d.find("sharing-erasures");
  },
  removed: async (d) => {
    // The page of the phone that was removed.
    await exchange(d.second);
    await toSharing(d.second);
    await d.second.find('[data-test="sharing-outside"]');
    const view = await call(d.second, { request: "sync" });
    assert.ok(view.outside);
    d.lead = d.hand;
    d.hand = d.second;
    return async () => {
      d.hand = d.lead;
      await d.endSecond();
      rmSync(d.place, { recursive: true, force: true });
    };
  },
};
