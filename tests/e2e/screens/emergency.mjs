// When it goes wrong, and before leaving.

import { born } from "./start.mjs";

async function jug(d, ml) {
  await d.tap("emergency-blood");
  await d.tap("loss-jug");
  await d.type("loss-volume", String(ml));
  await d.save();
}

export const emergency = {
  "far-away": async (d) => {
    await born(d);
    await d.enter("travel_time_set");
    await d.type("travel", "70");
    await d.save();
    await d.gone("undo");
  },
  "log-empty": (d) => d.tap("emergency"),
  "log-marked": async (d) => {
    await d.tap("emergency-response_marked-help_called");
    await d.hand.page.locator('[data-test="emergency-response_marked-help_called"] .clocks bdi').first().waitFor();
  },
  "log-medicine": async (d) => {
    await d.tap("emergency-medicine-oxytocin");
    await d.type("medicine-dose", "10 IU");
  },
  "log-full": async (d) => {
    await d.save();
    await jug(d, 350);
    await jug(d, 300);
    await d.find("account");
  },
  scribe: async (d) => {
    await d.tap("scribe");
    await d.type("scribe-name", "Ben Olsen");
  },
  "scribe-band": async (d) => {
    await d.tap("scribe-set");
    await d.find("scribe-end");
    await d.tap("sheet-close");
    await d.find("band-scribe");
  },
  leaving: async (d) => {
    await d.tap("more");
    await d.tap("more-leaving");
    await d.find("leaving-open");
  },
  "leaving-later": async (d) => {
    await d.tap("leaving-warning_signs");
    await d.tap("leaving-contact");
    await d.type("contact-when", "Visit tomorrow at 10");
    await d.type("contact-call", "Ida, 0123");
    await d.save();
  },
};
