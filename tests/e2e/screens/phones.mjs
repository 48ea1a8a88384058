// Two phones at one birth: this one shows its code and reads the answer, then joins a birth of the other's.

import { call } from "../core.mjs";
import { another, give, photographed } from "../phones.mjs";
import { born, latest, record } from "./start.mjs";

const CLIENT = { name: "Rosa Longname-Quill", born: "1996-11-20", gestation: null, gravida: null, para: null, blood_group: null, allergies: null };

export const phones = {
  "second-phone": async (d) => {
    await born(d);
    const { second, end } = await another(d.hand.page.context().browser(), d.hand);
    Object.assign(d, { second, endSecond: end });
    await d.tap("more");
    await d.tap("more-phones");
    await d.find("qr");
  },
  "code-as-text": async (d) => {
    await d.tap("code-as-text");
    await d.find("code-text");
  },
  "code-not-seen": async (d) => {
    await d.tap("code-type");
    await d.type("code-typed", "blue door");
    await d.tap("code-use");
    await d.find("code-error");
  },
  compared: async (d) => {
    await d.second.tap('[data-test="join-birth"]');
    await photographed(d.hand, d.second);
    await d.second.tap('[data-test="join"]');
    await d.second.find('[data-test="join-open"]');
    await photographed(d.second, d.hand);
    await d.find("compared");
    await d.find("comparisons");
  },
  awaited: async (d) => {
    await d.tap("sheet-close");
    await d.find("awaits");
  },
  join: async (d) => {
    await d.tap("back");
    await d.tap("join-birth");
    await d.find("code-input");
  },
  found: async (d) => {
    await call(d.second, { request: "baby_born_now", ago_ms: 0 });
    const { birth } = await latest({ hand: d.second });
    const { text } = await call(d.second, { request: "show_code", birth, answer: false });
    await d.tap("code-type");
    await d.type("code-typed", text);
    await d.tap("code-use");
    await d.find("join");
  },
  answer: async (d) => {
    await d.tap("join");
    await d.find("join-open");
  },
  partial: async (d) => {
    await d.tap("join-open");
    await d.find("awaits");
  },
  merged: async (d) => {
    const { birth } = await latest(d);
    // Each signs what it has.
    await record(d.second, birth, "cord_clamped", { baby: 1 });
    for (const hand of [d.hand, d.second]) await call(hand, { request: "sign", birth, signer: null });
    await give(d.second, d.hand);
    await d.hand.anew();
    await d.tap("birth");
    await d.tap("tab-timeline");
    await d.find("line");
  },
  "signed-apart": async (d) => {
    await d.tap("tab-record");
    await d.hand.page.locator('[data-test="signed-apart"]').first().scrollIntoViewIfNeeded();
  },
  alike: async (d) => {
    for (const label of ["blue door", "mill"]) {
      const { birth } = await call(d.hand, { request: "register_birth", label });
      await record(d.hand, birth, "client_recorded", CLIENT);
    }
    await d.tap("back");
    await d.find("alike");
    return d.endSecond;
  },
};
