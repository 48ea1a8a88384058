// What is read out, scanned, written and given out of hand.

import { call } from "../core.mjs";
import { born, latest, record } from "./start.mjs";

const CLIENT = { name: "Rosa Longname-Quill", born: "1996-11-20", gestation: 280, gravida: 2, para: 1, blood_group: "B Rh positive", allergies: "penicillin" };
const LOOK = { pulse: 118, systolic: 92, diastolic: 54, respirations: 22, fundus: "soft", bleeding: "heavy" };

export const handover = {
  "handover-empty": async (d) => {
    await born(d);
    await d.tap("more");
    await d.tap("more-handover");
    await d.find("handover");
  },
  handover: async (d) => {
    const { birth } = await latest(d);
    await record(d.hand, birth, "client_recorded", CLIENT);
    await record(d.hand, birth, "mother_observed", LOOK);
    await record(d.hand, birth, "blood_loss", { method: "jug", volume: 1100 });
    for (const step of ["help_called", "uterus_massaged", "ambulance_called"]) await record(d.hand, birth, "response_marked", { step });
    await d.tap("sheet-close");
    await d.tap("emergency");
    await d.tap("emergency-handover");
    await d.hand.page.locator('[data-test="handover"]', { hasText: "1100" }).waitFor();
  },
  asking: async (d) => {
    await d.tap("handover-ask");
    await d.type("asked-for-text", "Theatre ready, blood cross-matched");
  },
  code: async (d) => {
    await d.save();
    await d.tap("code-show");
    await d.hand.page.locator('[data-test="qr"]').scrollIntoViewIfNeeded();
  },
  given: async (d) => {
    await d.tap("code-hide");
    await d.tap("handover-given");
    await d.find("shared-to-hospital");
  },
  "given-incomplete": async (d) => {
    await d.tap("save");
    await d.find("sheet-incomplete");
  },
  "handed-over": async (d) => {
    await d.tap("shared-to-ambulance");
    await d.type("shared-name", "Ben Olsen");
    await d.save();
    await d.find("undo");
  },
  files: async (d) => {
    await d.tap("handover-files");
    await d.hand.page.locator('[data-test="given"]', { hasText: "Ben Olsen" }).waitFor();
  },
  "file-written": async (d) => {
    await d.tap("file-transfer");
    await d.find("file-given");
  },
  "record-given": async (d) => {
    // The files lie over the emergency.
    await d.hand.page.locator('[data-test="sheet-close"]').last().tap();
    await d.gone("file-given");
    await d.tap("sheet-close");
    await d.tap("tab-record");
    await d.find("record-given");
  },
  "handover-hidden": async (d) => {
    await call(d.hand, { request: "rest" });
    await d.hand.anew();
    await d.tap("birth");
    await d.find("band-hidden");
    await d.tap("emergency");
    await d.tap("emergency-handover");
    await d.find("handover");
  },
};
