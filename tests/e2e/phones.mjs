// A second device of the same practice, and codes that go from one screen to the other's camera.

import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";

import { PASSPHRASE } from "./birth.mjs";
import { Phone, startBridge } from "./browser.mjs";
import { at, backUp, call } from "./core.mjs";

const PART = 1024 * 1024;

/** Gives everything that one device has to another one. */
export async function give(from, to) {
  const file = readFileSync(await backUp(from));
  for (let offset = 0; offset < file.length; offset += PART) {
    await call(to, { request: "backup_part", offset, base64: file.subarray(offset, offset + PART).toString("base64") });
  }
  return call(to, { request: "restore", passphrase: PASSPHRASE });
}

/** Another device of the practice that is on the first one; `end` takes it away. */
export async function another(browser, hand, size) {
  const folder = mkdtempSync(join(tmpdir(), "secundine-"));
  const bridge = await startBridge(folder);
  const second = await Phone.open(browser, bridge.address, size);
  await give(hand, second);
  await second.page.reload();
  await second.find('[data-test="baby-born"]');
  const end = async () => {
    await second.page.context().close();
    await bridge.stop();
    rmSync(folder, { recursive: true, force: true });
  };
  return { second, end };
}

/** One phone's camera sees what the other's screen shows. */
export async function photographed(screen, camera) {
  const code = at(screen, "qr");
  await code.scrollIntoViewIfNeeded();
  const buffer = await screen.page.screenshot();
  await at(camera, "code-input").setInputFiles({ name: "code.png", mimeType: "image/png", buffer });
}
