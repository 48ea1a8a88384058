// Each sheet that writes, what it says when it cannot, and what is read of the birth afterwards.

import { born, loss } from "./start.mjs";

/** Opens the sheet of a kind, the one before it closed. */
const sheet = (kind) => async (d) => {
  if (await d.hand.has('[data-test="sheet-close"]')) await d.tap("sheet-close");
  await d.enter(kind);
  await d.find("save");
};

export const entries = {
  more: async (d) => {
    await born(d);
    await d.tap("more");
  },
  protocols: async (d) => {
    await d.tap("choose-protocol");
    await d.find("protocol-who");
  },
  loss: sheet("blood_loss"),
  "loss-weighed": async (d) => {
    await d.tap("loss-weighed");
    await d.type("loss-gross", "90");
    await d.type("loss-dry", "690");
  },
  "loss-incomplete": async (d) => {
    await d.tap("save");
    await d.hand.find('[data-test="sheet-error"], [data-test="sheet-incomplete"]');
  },
  observation: async (d) => {
    await sheet("mother_observed")(d);
    for (const figure of "96" + "60" + "90") await d.tap(`pad-${figure}`);
  },
  "observation-error": async (d) => {
    await d.type("systolic", "60");
    await d.type("diastolic", "90");
    await d.tap("when-typed");
    await d.tap("save");
    await d.find("sheet-error");
  },
  perineum: sheet("perineum_examined"),
  medicine: sheet("medicine_given"),
  "medicine-cautions": async (d) => {
    await d.tap("medicine-carboprost");
    await d.find("medicine-cautions");
  },
  apgar: sheet("apgar_scored"),
  newborn: sheet("newborn_measured"),
  note: sheet("noted"),
  client: sheet("client_recorded"),
  "client-conditions": async (d) => {
    await d.type("client-name", "Rosa Quill");
    if (await d.hand.has('[data-test="client-allergies-some"]')) await d.tap("client-allergies-some");
  },
  travel: async (d) => {
    await d.save();
    await sheet("travel_time_set")(d);
  },
  contact: sheet("next_contact_planned"),
  timeline: async (d) => {
    await d.tap("sheet-close");
    await loss(d, 250);
    await d.enter("noted");
    await d.type("note-text", "Mother warm and talking. A long line without end: " + "skin to skin, ".repeat(8));
    await d.save();
    await d.tap("tab-timeline");
    await d.find("timeline");
  },
  picture: async (d) => {
    if (await d.hand.has('[data-test="picture-open"]')) await d.tap("picture-open");
    await d.find("picture");
  },
  line: async (d) => {
    if (await d.hand.has('[data-test="sheet-close"]')) await d.tap("sheet-close");
    await d.hand.tap('[data-test="line"][data-kind="blood_loss"] button');
    await d.find("correct");
  },
  correction: async (d) => {
    await d.tap("correct");
    await d.find("reason");
  },
  corrected: async (d) => {
    await d.type("loss-volume", "260");
    await d.type("reason", "Looked at the clock on the wall");
    await d.tap("when-typed");
    await d.save();
  },
  late: async (d) => {
    await d.tap("late-entry");
    await d.find("more-mark-cord_clamped");
  },
  "late-when": async (d) => {
    await d.tap("more-mark-cord_clamped");
    await d.find("save");
  },
  record: async (d) => {
    await d.tap("when-typed");
    await d.tap("sheet-close");
    await d.tap("tab-record");
    await d.find("sign");
  },
  "record-signed": async (d) => {
    await d.tap("sign");
    await d.find("signed-state");
  },
  "record-other-signer": async (d) => {
    if (await d.hand.has('[data-test="sign-other"]')) await d.tap("sign-other");
  },
};
