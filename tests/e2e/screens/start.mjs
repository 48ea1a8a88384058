// Where several walks begin.

import assert from "node:assert/strict";
import { setTimeout as sleep } from "node:timers/promises";

import { createPractice } from "../birth.mjs";
import { call, now } from "../core.mjs";

/** The buttons keep their places so long after a mark. */
export const SETTLED_MS = 1_300;

/** A practice and a baby just born. */
export async function born(d) {
  await createPractice(d.hand);
  await d.tap("baby-born");
  await d.find("mark-cord_clamped");
}

/** A placenta just born, and its examination open. */
export async function placenta(d) {
  await born(d);
  await sleep(SETTLED_MS);
  await d.tap("more");
  await d.tap("more-mark-placenta_born");
  await d.tap("tab-exam");
  await d.find("exam-question");
}

/** The line of the latest birth. */
export async function latest(d) {
  const { births } = await call(d.hand, { request: "births", skip: 0, take: 1 });
  return births[0];
}

/** Blood in a jug, by hand. */
export async function loss(d, ml) {
  await d.tap("enter-blood");
  await d.tap("loss-jug");
  await d.type("loss-volume", String(ml));
  await d.save();
  await d.hand.run("window.scrollTo(0, 0)");
}

/** Writes a fact without a hand. */
export async function record(hand, birth, kind, data, at = now) {
  const answer = await call(hand, { request: "record", birth, fact: { kind, data }, at });
  assert.ok(answer.entry, JSON.stringify(answer));
}
