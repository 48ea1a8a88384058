// A dozen lines of W3C WebDriver: enough to drive the real window through WebKitWebDriver.

import { spawn } from "node:child_process";
import { once } from "node:events";
import { setTimeout as sleep } from "node:timers/promises";

const ELEMENT = "element-6066-11e4-a52e-4f735466cecf";

/** Starts the driver, and the program in a window of its own. */
export async function openWindow(program, environment, port = 4455) {
  // Without a graphics card WebKitGTK's GPU workers draw through a software GL in which they crash now and then.
  const drawing = { WEBKIT_SKIA_ENABLE_CPU_RENDERING: "1" };
  const env = { ...process.env, ...drawing, ...environment, TAURI_WEBVIEW_AUTOMATION: "true", TAURI_AUTOMATION: "true" };
  const driver = spawn("WebKitWebDriver", [`--port=${port}`], { env, stdio: ["ignore", "inherit", "inherit"] });
  const base = `http://127.0.0.1:${port}`;
  for (let tries = 0; ; tries += 1) {
    if (await fetch(`${base}/status`).then((answer) => answer.ok, () => false)) break;
    if (tries > 100) throw new Error("WebKitWebDriver does not answer (Debian package webkit2gtk-driver)");
    await sleep(100);
  }
  const capabilities = { alwaysMatch: { "webkitgtk:browserOptions": { binary: program, args: [] } } };
  const { sessionId } = await ask(base, "POST", "/session", { capabilities });
  return new Window(`${base}/session/${sessionId}`, driver);
}

async function ask(base, method, path, body) {
  const answer = await fetch(base + path, { method, body: body && JSON.stringify(body) });
  const { value } = await answer.json();
  if (!answer.ok) throw new Error(`${method} ${path}: ${value.error}: ${value.message}`);
  return value;
}

class Window {
  #base;
  #driver;

  constructor(base, driver) {
    this.#base = base;
    this.#driver = driver;
  }

  /** Runs a function body in the page. */
  run(script, ...args) {
    return ask(this.#base, "POST", "/execute/sync", { script, args });
  }

  /** The element once it is there and shown. */
  async find(selector, timeout = 15_000) {
    const end = Date.now() + timeout;
    for (;;) {
      const found = await ask(this.#base, "POST", "/elements", { using: "css selector", value: selector });
      for (const element of found) {
        const id = element[ELEMENT];
        const shown = await this.run("return arguments[0].getClientRects().length > 0", element).catch(() => false);
        if (shown) return id;
      }
      if (Date.now() > end) throw new Error(`not on the screen: ${selector}\n${await this.text()}`);
      await sleep(100);
    }
  }

  async has(selector) {
    const found = await ask(this.#base, "POST", "/elements", { using: "css selector", value: selector });
    return found.length > 0;
  }

  /** A real pointer press and release on the element. */
  async tap(selector) {
    const id = await this.find(selector);
    await this.run('arguments[0].scrollIntoView({ block: "center" })', { [ELEMENT]: id });
    await ask(this.#base, "POST", `/element/${id}/click`, {});
  }

  /** Puts the text in place of what stands there. */
  async type(selector, text) {
    const id = await this.find(selector);
    await ask(this.#base, "POST", `/element/${id}/clear`, {});
    await ask(this.#base, "POST", `/element/${id}/value`, { text });
  }

  async textOf(selector) {
    const id = await this.find(selector);
    return ask(this.#base, "GET", `/element/${id}/text`);
  }

  /** All text of the page, for messages of failures. */
  text() {
    return this.run("return document.body.innerText");
  }

  /** The page as PNG bytes. */
  async picture() {
    return Buffer.from(await ask(this.#base, "GET", "/screenshot"), "base64");
  }

  /** Closes the window and stops the driver. */
  async close() {
    await ask(this.#base, "DELETE", "").catch(() => {});
    const ended = once(this.#driver, "exit");
    this.#driver.kill();
    await ended;
  }
}
