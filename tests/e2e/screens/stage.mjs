// The third stage from the birth to the placenta, marks while locked, names hidden, twins.

import { setTimeout as sleep } from "node:timers/promises";

import { PASSPHRASE } from "../birth.mjs";
import { call } from "../core.mjs";
import { SETTLED_MS, born, latest, loss, record } from "./start.mjs";

async function mark(d, kind) {
  await d.tap(`mark-${kind}`);
  await d.find("undo");
}

async function unlock(d) {
  await d.type("passphrase", PASSPHRASE);
  await d.tap("unlock");
  await d.find("births");
}

/** So many minutes ago, as typed. */
async function earlier(d, minutes) {
  const { birth } = await latest(d);
  const view = await call(d.hand, { request: "birth", birth });
  const then = new Date(`${view.today}T${view.clock.slice(0, 5)}:00Z`);
  then.setUTCMinutes(then.getUTCMinutes() - minutes);
  const [date, time] = then.toISOString().split("T");
  return { at: "typed", date, clock: time.slice(0, 5), precision: "exact" };
}

export const stage = {
  born: (d) => born(d),
  saving: async (d) => {
    await sleep(SETTLED_MS);
    let go;
    const held = new Promise((done) => (go = done));
    await d.hand.page.route("**/call", async (route) => {
      if (route.request().postDataJSON().request === "record") await held;
      await route.continue();
    });
    await d.tap("mark-cord_pulsation_stopped");
    await d.hand.page.locator('[data-test="mark-cord_pulsation_stopped"].saving').waitFor();
    return async () => {
      go();
      await d.hand.page.unrouteAll({ behavior: "wait" });
    };
  },
  undo: (d) => d.find("undo"),
  "cord-clamped": async (d) => {
    await sleep(SETTLED_MS);
    await mark(d, "cord_clamped");
    await d.gone("undo");
  },
  blood: async (d) => {
    await loss(d, 200);
    await d.gone("undo");
  },
  "notice-caution": async (d) => {
    await loss(d, 150);
    await d.find("notice-caution");
  },
  "notice-note": async (d) => {
    // None of the three protocols has a step of this level; a practice's own may.
    await d.hand.page.route("**/call", async (route) => {
      const answer = await route.fetch();
      await route.fulfill({ response: answer, body: (await answer.text()).replaceAll('"level":"caution"', '"level":"note"') });
    });
    await d.find("notice-note");
    return () => d.hand.page.unrouteAll({ behavior: "wait" });
  },
  "notice-limit": async (d) => {
    await loss(d, 300);
    await d.find("notice-limit");
    await d.gone("undo");
  },
  "notice-open": (d) => d.hand.tap('[data-test="notice-limit"] button'),
  "care-chosen": async (d) => {
    await d.hand.tap('[data-test="notice-limit"] button');
    await d.tap("more");
    await d.tap("care-physiological");
    await d.find("undo");
  },
  twins: async (d) => {
    await d.tap("more");
    await d.tap("more-mark-baby_born-2");
    await d.find("cord-clock-2");
    await d.gone("undo");
  },
  "mark-now": async (d) => {
    await d.hand.page.evaluate(async () => {
      for (let burst = 0; burst < 3; burst += 1) {
        for (let id = 10; id < 14; id += 1) {
          for (const kind of ["pointerdown", "pointerup"]) {
            document.body.dispatchEvent(new PointerEvent(kind, { pointerId: id, pointerType: "touch", bubbles: true }));
          }
        }
        await new Promise((done) => setTimeout(done, 700));
      }
    });
    await d.find("mark-now");
  },
  "names-hidden": async (d) => {
    await d.tap("mark-now-close");
    await call(d.hand, { request: "rest" });
    await d.hand.anew();
    await d.tap("birth");
    await d.find("band-hidden");
  },
  "names-asked": async (d) => {
    await d.tap("show-names");
    await d.type("names-passphrase", "something else");
    await d.tap("names-do");
    await d.find("names-wrong");
  },
  "locked-reminder": async (d) => {
    await d.type("names-passphrase", PASSPHRASE);
    await d.tap("names-do");
    await d.gone("names-do");
    await d.tap("back");
    await d.tap("menu");
    await d.tap("lock");
    await d.find("locked-reminder");
  },
  "locked-stage": async (d) => {
    // What was to be reminded of goes with the page.
    await d.hand.anew();
    await d.find("locked-stage");
  },
  "locked-undo": async (d) => {
    // A touch right after the screen changed is not taken for a mark.
    await d.hand.page.waitForTimeout(1_000);
    await d.hand.tap('[data-test="locked-stage"] [data-primary]');
    await d.find("undo");
  },
  "locked-others": async (d) => {
    await sleep(SETTLED_MS);
    await d.tap("locked-others");
  },
  "locked-typing": async (d) => {
    await d.gone("undo");
    await d.tap("locked-unlock");
    await d.find("unlock");
  },
  drained: async (d) => {
    await unlock(d);
    await d.find("drained");
  },
  hours: async (d) => {
    await d.tap("drained-done");
    const { birth } = await call(d.hand, { request: "register_birth", label: "Upper Farm" });
    await record(d.hand, birth, "baby_born", { baby: 1 }, await earlier(d, 12 * 60));
    await d.hand.anew();
    await d.tap("birth");
    await d.find("clock");
  },
  after: async (d) => {
    const { birth } = await latest(d);
    for (const [kind, data] of [["cord_clamped", { baby: 1 }], ["placenta_born", { babies: [1] }]]) {
      await record(d.hand, birth, kind, data);
    }
    await d.hand.anew();
    await d.tap("birth");
    await d.find("exam-progress");
  },
};
