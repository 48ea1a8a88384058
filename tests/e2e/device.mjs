// What happens to a device: a button held, a disk that refuses, a page of the store that is spoilt.

import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { closeSync, openSync, readSync, readdirSync, statSync, writeSync } from "node:fs";
import { join } from "node:path";
import { setTimeout as sleep } from "node:timers/promises";

import { at } from "./core.mjs";

/** Holds a button for more than its second. */
export async function hold(hand, name) {
  await at(hand, name).focus();
  await hand.page.keyboard.down("Enter");
  await sleep(1_300);
  await hand.page.keyboard.up("Enter");
}

/** From here on the system refuses every write past so many bytes into a file; `unlimited` lifts it. */
export function limitFiles(bridge, bytes) {
  execFileSync("prlimit", ["--pid", String(bridge.pid), `--fsize=${bytes}:unlimited`]);
}

/** Overwrites a part of one page of the database: one among the entries, unless told. */
export function damage(folder, page) {
  const name = readdirSync(folder).find((file) => file.endsWith(".db"));
  const path = join(folder, name);
  const pages = statSync(path).size / 4096;
  assert.ok(pages > 8, `${pages} pages`);
  const file = openSync(path, "r+");
  const bytes = Buffer.alloc(256);
  const place = (page ?? Math.floor((pages * 3) / 4)) * 4096 + 1024;
  readSync(file, bytes, 0, bytes.length, place);
  writeSync(file, bytes.map((byte) => byte ^ 0xff), 0, bytes.length, place);
  closeSync(file);
}
