// The examination: each kind of answer, its overview, one page, its drawing, its photographs.

import { setTimeout as sleep } from "node:timers/promises";

import { call } from "../core.mjs";
import { CARDS, DISC, camera, photograph, touch } from "../photograph.mjs";
import { latest, placenta, record } from "./start.mjs";

/** From the list to an item. */
const item = (name, ...touches) => async (d) => {
  if (await d.hand.has('[data-test="exam-list"]')) await d.tap("exam-list");
  await d.tap(`exam-jump-${name}`);
  await d.hand.find(`[data-test="exam-question"][data-item="${name}"]`);
  for (const touch of touches) await d.tap(touch);
};

/** On from the step of measuring that is open. */
const next = (d) => d.tap("step-next");
const seen = camera(8);

async function toList(d) {
  if (await d.hand.has('[data-test="exam-list"]')) await d.tap("exam-list");
  await d.find("exam-answered");
}

export const examination = {
  "item-several": async (d) => {
    await placenta(d);
    await d.hand.find('[data-item="ready"]');
  },
  "item-several-picked": async (d) => {
    await d.tap("pick-gloves");
    await d.tap("pick-light");
  },
  "item-choice": async (d) => {
    await d.tap("exam-keep");
    await d.hand.find('[data-item="fetal-surface"]');
  },
  "item-measure": async (d) => {
    await item("insertion", "option-velamentous")(d);
    await d.hand.find('[data-item="insertion-edge"]');
  },
  "item-pieces": item("cord-length", "quick-200"),
  "item-other-value": item("cord-thickness", "exam-other-value", "pad-9", "pad-9"),
  "item-coils": item("cord-coils"),
  "item-pad": item("weight", "pad-5", "pad-6"),
  "item-before": async (d) => {
    await d.tap("pad-0");
    await d.tap("exam-keep");
    await item("weight")(d);
  },
  list: async (d) => {
    for (const [name, ...touches] of [
      ["cord-length", "quick-200", "exam-piece-missing"],
      ["disc-length", "quick-200"],
      ["disc-breadth", "quick-180"],
      ["amnion", "option-ragged"],
      ["vessels", "option-two"],
      ["knots", "option-true-tight"],
      ["maternal-surface", "pick-firm-areas", "exam-keep"],
    ]) await item(name, ...touches)(d);
    await toList(d);
    await d.find("notice-limit");
  },
  "list-figure": async (d) => {
    if (await d.hand.has('[data-test="exam-figures-fold"][aria-expanded="false"]')) await d.tap("exam-figures-fold");
    await d.hand.tap('[data-test^="figure-"]');
  },
  "list-reasons": (d) => d.tap("exam-reasons-fold"),
  "list-papers": async (d) => {
    await d.tap("exam-files");
    await d.tap("file-laboratory-1");
    await d.find("file-path");
  },
  page: async (d) => {
    await d.tap("sheet-close");
    await d.tap("exam-page");
  },
  sketch: async (d) => {
    await d.tap("exam-page-off");
    await d.tap("exam-sketch");
    await d.find("sketch-pad");
  },
  "sketch-point": async (d) => {
    await d.tap("sketch-side-maternal");
    const pad = d.hand.page.locator('[data-test="sketch-pad"]');
    await pad.scrollIntoViewIfNeeded();
    const box = await pad.boundingBox();
    await d.hand.page.touchscreen.tap(box.x + box.width * 0.4, box.y + box.height * 0.5);
    await sleep(400);
  },
  "photographs-none": async (d) => {
    await d.tap("sketch-back");
    await d.tap("photographs");
    await d.find("photos-none");
  },
  "photographs-error": async (d) => {
    await d.hand.page.locator('[data-test="photo-input"]').setInputFiles({ name: "a.jpg", mimeType: "image/jpeg", buffer: Buffer.from("GIF89a") });
    await d.find("photo-error");
  },
  photographs: async (d) => {
    await d.hand.page.locator('[data-test="photo-input"]').setInputFiles(await photograph(d.hand, seen));
    await d.hand.find('[data-test="photo"] img');
  },
  photograph: async (d) => {
    await d.hand.run('const kept = JSON.parse(localStorage.getItem("secundine-settings") ?? "{}"); localStorage.setItem("secundine-settings", JSON.stringify({ ...kept, measuring: true }))');
    await d.hand.anew();
    await d.tap("birth");
    await d.tap("tab-exam");
    await d.tap("photographs");
    await d.tap("photo");
    await d.hand.find('[data-test="photo-large"] img');
  },
  "measure-reference": async (d) => {
    await d.tap("photo-measure-begin");
    await d.tap("reference-two_cards");
  },
  "measure-corners": async (d) => {
    await next(d);
    await d.hand.find('[data-test="photo-stage"] img');
    for (const [n, corner] of CARDS.flat().map(seen).entries()) {
      await (await touch(d.hand, corner))();
      if (n < 7) await d.tap("point-next");
    }
  },
  "measure-outline": async (d) => {
    await next(d);
    const disc = DISC.map(seen);
    await (await touch(d.hand, disc[0], disc.slice(1)))();
    await d.find("outline-again");
  },
  "measure-insertion": async (d) => {
    await next(d);
    await (await touch(d.hand, seen([40, 10])))();
  },
  "measure-thickness": async (d) => {
    await next(d);
    await d.type("photo-thickness", "0.1");
    await d.hand.page.keyboard.press("Tab");
  },
  "measure-result": async (d) => {
    await next(d);
    await d.find("photo-sizes");
  },
  "measure-kept": async (d) => {
    await d.tap("measure-keep");
    await d.find("photo-measure");
  },
  "second-cord": async (d) => {
    const { birth } = await call(d.hand, { request: "register_birth", label: "Harbour" });
    for (const baby of [1, 2]) await record(d.hand, birth, "baby_born", { baby });
    await record(d.hand, birth, "placenta_born", { babies: [1, 2] });
    await d.hand.anew();
    await d.tap("birth");
    await d.tap("tab-exam");
    await d.tap("exam-list");
    await d.tap("exam-jump-cord-length-2");
    await d.hand.find('[data-test="exam-question"][data-cord="2"]');
  },
  "list-twins": async (d) => {
    const { birth } = await latest(d);
    await record(d.hand, birth, "examined", { placenta: 1, item: "amnion", answer: { answer: "choice", option: "whole" } });
    await toList(d);
  },
};
