// Every screen of the page and each of its states, as named stops on a few walks: for pictures, for axe and for sizes.

import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";

import { Phone, launch, startBridge } from "./browser.mjs";
import { hold } from "./device.mjs";
import { emergency } from "./screens/emergency.mjs";
import { entries } from "./screens/entries.mjs";
import { examination } from "./screens/examination.mjs";
import { handover } from "./screens/handover.mjs";
import { harm } from "./screens/harm.mjs";
import { phones } from "./screens/phones.mjs";
import { practice } from "./screens/practice.mjs";
import { sending } from "./screens/sending.mjs";
import { sharing } from "./screens/sharing.mjs";
import { stage } from "./screens/stage.mjs";
import { voice } from "./screens/voice.mjs";

/**
 * Walks by name. A stop is a step from the stop before it; where it gives back a function, that is called once the stop was
 * looked at.
 */
export const WALKS = { practice, stage, entries, emergency, handover, phones, sending, sharing, examination, voice, harm };

/** The names of all stops, as `walk/stop`. */
export const STOPS = Object.entries(WALKS).flatMap(([walk, stops]) => Object.keys(stops).map((stop) => `${walk}/${stop}`));

const FAKE_VOICE = ["--use-fake-device-for-media-stream", "--use-fake-ui-for-media-stream"];

const PATIENCE_MS = 60_000;

/** A browser for walks, with a microphone that hums. */
export const launchForWalks = () => launch(...FAKE_VOICE);

/** One device: its folder, its bridge, and its page. */
class Device {
  #browser;
  #language;

  constructor(browser, language) {
    this.#browser = browser;
    this.#language = language;
    this.folder = mkdtempSync(join(tmpdir(), "secundine-"));
  }

  /** Begins the bridge, anew after it was stopped, and opens its page. */
  async begin(script) {
    await this.hand?.page.context().close();
    await this.bridge?.stop();
    this.bridge = await startBridge(this.folder);
    const address = new URL(this.bridge.address);
    if (this.#language) address.searchParams.set("language", this.#language);
    // A phone's page that changes its size keeps the scale of the size before.
    this.hand = await Phone.open(this.#browser, address.href, { width: 360, height: 740, script, mobile: false });
    // A busy machine takes its time over a photograph.
    this.hand.page.setDefaultTimeout(PATIENCE_MS);
  }

  async end() {
    await this.hand?.page.context().close();
    await this.bridge?.stop("SIGKILL");
    rmSync(this.folder, { recursive: true, force: true });
  }

  tap(name) {
    return this.hand.tap(`[data-test="${name}"]`);
  }

  find(name) {
    return this.hand.find(`[data-test="${name}"]`);
  }

  type(name, text) {
    return this.hand.type(`[data-test="${name}"]`, text);
  }

  async gone(name) {
    await this.hand.page.locator(`[data-test="${name}"]`).first().waitFor({ state: "detached" });
  }

  /** Saves the open sheet. */
  async save() {
    await this.tap("save");
    await this.gone("save");
  }

  /** More, and the sheet of a kind of entry. */
  async enter(kind) {
    await this.tap("more");
    await this.tap(`enter-${kind}`);
  }

  /** Holds a button for more than its second. */
  hold(name) {
    return hold(this.hand, name);
  }
}

/** Goes from stop to stop of one walk, and shows each; `only` tells whether a stop is to be shown. */
export async function walk(browser, name, show, { language, only = () => true } = {}) {
  const device = new Device(browser, language);
  try {
    await device.begin();
    for (const [stop, step] of Object.entries(WALKS[name])) {
      const after = await step(device).catch(async (error) => {
        throw new Error(`on the way to ${name}/${stop}: ${error.message}\n${await device.hand.text().catch(String)}`, { cause: error });
      });
      if (only(`${name}/${stop}`)) await show(`${name}/${stop}`, device.hand);
      await after?.();
    }
  } finally {
    await device.end();
  }
}
