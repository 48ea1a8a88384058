// Headless Chromium with touch, against the loopback bridge: the page as on a phone.

import { spawn } from "node:child_process";
import { once } from "node:events";
import { createInterface } from "node:readline";

import { chromium } from "playwright-core";

/** Starts the bridge over these folders; gives its address and a way to end it. */
export async function startBridge(folder) {
  const program = process.env.SECUNDINE_BRIDGE ?? "target/debug/secundine-bridge";
  const bridge = spawn(program, [`${folder}/practice`, `${folder}/records`, "ui/dist"], { stdio: ["ignore", "pipe", "inherit"] });
  const [address] = await once(createInterface({ input: bridge.stdout }), "line");
  const stop = async (signal = "SIGTERM") => {
    if (bridge.exitCode !== null || bridge.signalCode !== null) return;
    bridge.kill(signal);
    await once(bridge, "exit");
  };
  return { address, stop };
}

/** Debian's Chromium, without any connection of its own. */
export function launch() {
  const args = ["--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking"];
  return chromium.launch({ executablePath: "/usr/bin/chromium", args });
}

/** A phone's page as the hand that `birth.mjs` asks for. */
export class Phone {
  constructor(page) {
    this.page = page;
  }

  static async open(browser, address, { width, height, theme } = {}) {
    const context = await browser.newContext({ viewport: { width: width ?? 360, height: height ?? 800 }, hasTouch: true, isMobile: true });
    const page = await context.newPage();
    page.setDefaultTimeout(15_000);
    const phone = new Phone(page);
    phone.problems = [];
    page.on("pageerror", (error) => phone.problems.push(String(error)));
    page.on("console", (message) => message.type() === "error" && !message.text().includes("422") && phone.problems.push(message.text()));
    await page.goto(address);
    if (theme) await phone.wear(theme);
    return phone;
  }

  /** Puts on a theme the way the page keeps it. */
  async wear(theme) {
    await this.page.evaluate((name) => document.documentElement.setAttribute("data-theme", name), theme);
  }

  find(selector) {
    return this.page.locator(selector).first().waitFor();
  }

  tap(selector) {
    return this.page.locator(selector).first().tap();
  }

  type(selector, text) {
    return this.page.locator(selector).first().fill(text);
  }

  textOf(selector) {
    return this.page.locator(selector).first().innerText();
  }

  run(body) {
    return this.page.evaluate(`(() => { ${body} })()`);
  }

  text() {
    return this.page.innerText("body");
  }

  picture() {
    return this.page.screenshot();
  }
}
