// The examination read aloud, spoken, and written up later.

import { setTimeout as sleep } from "node:timers/promises";

import { placenta } from "./start.mjs";

/** A device with a voice that says nothing. */
function withVoice() {
  const voice = { name: "local", lang: "en-GB", localService: true };
  window.SpeechSynthesisUtterance = class {};
  const synthesis = Object.assign(new EventTarget(), { getVoices: () => [voice], speak: () => {}, cancel: () => {} });
  Object.defineProperty(window, "speechSynthesis", { value: synthesis });
}

export const voice = {
  aloud: async (d) => {
    await d.begin(withVoice);
    await placenta(d);
    await d.tap("exam-skip");
    await d.tap("aloud");
    await d.find("aloud-again");
  },
  recording: async (d) => {
    await d.tap("aloud");
    await d.tap("voice-begin");
    await d.find("voice-keep");
    await sleep(1_500);
  },
  paused: (d) => d.tap("voice-pause"),
  kept: async (d) => {
    await d.tap("voice-pause");
    await sleep(1_000);
    await d.tap("voice-keep");
    await d.find("undo");
  },
  "record-to-write-up": async (d) => {
    await d.tap("tab-record");
    await d.find("record-to-write-up");
  },
  "births-to-write-up": async (d) => {
    await d.tap("back");
    await d.find("to-write-up");
  },
  "to-write-up": async (d) => {
    await d.tap("to-write-up");
    await d.find("to-write-up-list");
  },
  "write-up": async (d) => {
    await d.tap("voice-line");
    await d.find("voice-play");
  },
  "to-write-up-none": async (d) => {
    await d.type("write-up-text", "Chorion ragged along one edge.");
    await d.tap("write-up-done");
    await d.find("to-write-up-none");
  },
};
