// Headless Chromium with touch, against the loopback bridge: the page as on a phone.

import assert from "node:assert/strict";
import { spawn } from "node:child_process";
import { once } from "node:events";
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { createInterface } from "node:readline";
import { setTimeout as sleep } from "node:timers/promises";

import { chromium } from "playwright-core";

export const BETWEEN_TAPS_MS = 180;

/** Starts the bridge over a folder, a passing one unless told; gives its address, its process and a way to end it. */
export async function startBridge(folder = mkdtempSync(join(tmpdir(), "secundine-"))) {
  const program = process.env.SECUNDINE_BRIDGE ?? "target/debug/secundine-bridge";
  // A write past a limit of the system is then refused, instead of ending the program.
  const line = ["--ignore-signal=XFSZ", program, `${folder}/practice`, `${folder}/records`, "ui/dist"];
  const bridge = spawn("env", line, { stdio: ["ignore", "pipe", "inherit"] });
  const [address] = await once(createInterface({ input: bridge.stdout }), "line");
  const stop = async (signal = "SIGTERM") => {
    if (bridge.exitCode !== null || bridge.signalCode !== null) return;
    bridge.kill(signal);
    await once(bridge, "exit");
  };
  return { address, pid: bridge.pid, stop };
}

/** Debian's Chromium, without any connection of its own; `more` are further switches. */
export function launch(...more) {
  const args = ["--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking", ...more];
  return chromium.launch({ executablePath: "/usr/bin/chromium", args });
}

/** Leaves pictures of the whole page in `out/FOLDER`. */
export function picturesIn(folder) {
  const out = resolve("out", folder);
  mkdirSync(out, { recursive: true });
  return (hand) => async (name) => {
    await sleep(250);
    writeFileSync(join(out, `${name}.png`), await hand.page.screenshot({ fullPage: true }));
  };
}

/** Each call of every page waits so long on its way: a test that looks before the page has its answer is found by it. */
const LATE_MS = Number(process.env.SECUNDINE_LATE_MS ?? 0);

async function callLate(page) {
  if (LATE_MS > 0) await page.route("**/call", (route) => sleep(LATE_MS).then(() => goOn(route)));
}

/** The page may be gone by now. */
const goOn = (route) => route.fallback().catch(() => {});

/** A page in a theme, that tells any error of its own. */
export async function openPage(browser, address, size, theme = "day") {
  const context = await browser.newContext({ viewport: size, hasTouch: true, reducedMotion: "no-preference" });
  await context.addInitScript((name) => {
    const settings = JSON.stringify({ theme: name, sound: false, vibration: false });
    if (!localStorage.getItem("secundine-settings")) localStorage.setItem("secundine-settings", settings);
  }, theme);
  const page = await context.newPage();
  await callLate(page);
  page.on("pageerror", (error) => console.error("page error:", error.message));
  page.on("console", (message) => message.type() === "error" && console.error("console:", message.text()));
  await page.goto(address);
  return page;
}

/** Waits until something holds, as long as for anything on a page. */
export async function until(what, holds) {
  for (const end = performance.now() + 15_000; performance.now() < end; await sleep(50)) if (await holds()) return;
  assert.fail(what);
}

export const at = (page, name) => page.locator(`[data-test="${name}"]`);

/** A phone's page as the hand that `birth.mjs` asks for. */
export class Phone {
  constructor(page) {
    this.page = page;
  }

  static async open(browser, address, { width, height, clock = false, script = null, mobile = true, scale = 1 } = {}) {
    const context = await browser.newContext({ viewport: { width: width ?? 360, height: height ?? 800 }, hasTouch: true, isMobile: mobile, deviceScaleFactor: scale });
    // What another device would have in its place.
    if (script) await context.addInitScript(script);
    const page = await context.newPage();
    page.setDefaultTimeout(15_000);
    await callLate(page);
    // Time that a test can move.
    if (clock) await page.clock.install();
    const phone = new Phone(page);
    phone.problems = [];
    page.on("pageerror", (error) => phone.problems.push(String(error)));
    page.on("console", (message) => message.type() === "error" && !message.text().includes("422") && phone.problems.push(message.text()));
    await page.goto(address);
    return phone;
  }

  /** Reads the page again at its beginning, and not where it was. */
  async anew() {
    const loaded = this.page.waitForEvent("load");
    // In one go, so that nothing writes the birth there again.
    await this.run("const at = new URLSearchParams(location.hash.slice(1)); at.delete('birth'); history.replaceState(null, '', '#' + at); location.reload()");
    await loaded;
  }

  /** As with a disk that takes its time: no call of this name gets through before it is let go, each in its turn or all. */
  async hold(name) {
    const waiting = [];
    const hold = async (route) => {
      if (route.request().postDataJSON().request === name) await new Promise((go) => waiting.push(go));
      await goOn(route);
    };
    await this.page.route("**/call", hold);
    return {
      next: () => waiting.shift()(),
      all: async () => {
        await this.page.unroute("**/call", hold);
        for (const go of waiting.splice(0)) go();
      },
    };
  }

  find(selector) {
    return this.page.locator(selector).first().waitFor();
  }

  async has(selector) {
    return (await this.page.locator(selector).count()) > 0;
  }

  /** No faster than a hand: four touches in half a second, or two at once, are taken for water. */
  async tap(selector, which = "first") {
    await sleep(Math.max(0, (this.tapped ?? 0) + BETWEEN_TAPS_MS - Date.now()));
    await this.page.locator(selector)[which]().tap();
    this.tapped = Date.now();
  }

  type(selector, text) {
    return this.page.locator(selector).first().fill(text);
  }

  /** Until every screen that was opened has been read in. */
  async settled() {
    await this.page.locator('[aria-busy="true"]').first().waitFor({ state: "detached" });
  }

  textOf(selector) {
    return this.page.locator(selector).first().innerText();
  }

  run(body) {
    return this.page.evaluate(`(() => { ${body} })()`);
  }

  async text() {
    await this.settled();
    return this.page.innerText("body");
  }

  picture() {
    return this.page.screenshot();
  }
}

/** A phone on an empty device; everything of it goes when the test ends. */
export async function emptyPhone(t, browser, size) {
  const folder = mkdtempSync(join(tmpdir(), "secundine-"));
  const bridge = await startBridge(folder);
  t.after(async () => {
    await bridge.stop();
    rmSync(folder, { recursive: true, force: true });
  });
  return { folder, bridge, hand: await Phone.open(browser, bridge.address, size) };
}
