// Pictures of every screen in the three lights, one sheet of them for each light, and how bright the dim red ones are:
// node tests/e2e/gallery.mjs [WALK...], into out/gallery.

import assert from "node:assert/strict";
import { mkdirSync, writeFileSync } from "node:fs";
import { join, resolve } from "node:path";

import { USUAL, dress } from "./fit.mjs";
import { STOPS, WALKS, launchForWalks, walk } from "./screens.mjs";

const out = resolve("out/gallery");
const THEMES = ["day", "night", "red"];
const PHONE = [360, 740];
/** The timing screen stands at other sizes too. */
const TIMING = "stage/cord-clamped";
const SIZES = [[320, 568], [411, 891], [768, 1024], [1280, 800], [740, 360]];
/** Mean relative luminance of a picture in the dim red light. */
const DIM = 0.02;
/** A code for a camera is black on white in every light. */
const WHITE = ["practice/recovery", "handover/code", "sharing/sheet", "sharing/join-code", "sharing/welcome"];
/** The luminance of #121212: no dark ground is lighter. */
const DARK = 0.0061;
const COLUMNS = 8;

/** Pictures by light, in the order of the walks. */
const taken = Object.fromEntries(THEMES.map((theme) => [theme, []]));

async function shoot(stop, hand) {
  for (const theme of THEMES) {
    for (const size of stop === TIMING ? [PHONE, ...SIZES] : [PHONE]) {
      await dress(hand.page, { size, theme });
      const name = `${stop.replace("/", "-")}-${theme}${size === PHONE ? "" : `-${size.join("x")}`}`;
      const png = await hand.page.screenshot({ path: join(out, `${name}.png`) });
      taken[theme].push({ stop, size, png });
    }
  }
  await dress(hand.page, USUAL);
}

/** Mean relative luminance of a picture as WCAG has it, and that of the colour which most of it has. */
function brightness(page, png) {
  return page.evaluate(async (letters) => {
    const image = await createImageBitmap(await (await fetch(`data:image/png;base64,${letters}`)).blob());
    const canvas = new OffscreenCanvas(image.width, image.height);
    const pen = canvas.getContext("2d");
    pen.drawImage(image, 0, 0);
    const { data } = pen.getImageData(0, 0, image.width, image.height);
    const linear = Array.from({ length: 256 }, (_, n) => (n / 255 <= 0.04045 ? n / 255 / 12.92 : ((n / 255 + 0.055) / 1.055) ** 2.4));
    const counts = new Map();
    let sum = 0;
    for (let at = 0; at < data.length; at += 4) {
      sum += 0.2126 * linear[data[at]] + 0.7152 * linear[data[at + 1]] + 0.0722 * linear[data[at + 2]];
      const colour = (data[at] << 16) | (data[at + 1] << 8) | data[at + 2];
      counts.set(colour, (counts.get(colour) ?? 0) + 1);
    }
    const [most] = [...counts].sort((a, b) => b[1] - a[1])[0];
    const ground = 0.2126 * linear[most >> 16] + 0.7152 * linear[(most >> 8) & 255] + 0.0722 * linear[most & 255];
    return { mean: sum / (data.length / 4), ground };
  }, png.toString("base64"));
}

/** All pictures of a light on one sheet, laid out by the browser. */
async function sheet(page, theme) {
  const order = (one) => STOPS.indexOf(one.stop);
  const figures = taken[theme]
    .sort((a, b) => order(a) - order(b))
    .map(({ stop, size, png }) => `<figure><img src="data:image/png;base64,${png.toString("base64")}"><figcaption>${stop}${size === PHONE ? "" : ` ${size.join("x")}`}</figcaption></figure>`);
  const style = `body{margin:8px;background:#444;color:#fff;font:12px sans-serif;display:grid;grid-template-columns:repeat(${COLUMNS},1fr);gap:8px}figure{margin:0}img{width:100%}`;
  await page.setContent(`<style>${style}</style>${figures.join("")}`);
  await page.waitForFunction(() => [...document.images].every((image) => image.complete));
  writeFileSync(join(out, `sheet-${theme}.png`), await page.screenshot({ fullPage: true }));
}

mkdirSync(out, { recursive: true });
const browser = await launchForWalks();
const wrong = [];
/** Screens of the dim red light that are past the goal: told, as a bench tells. */
const bright = [];
try {
  const names = process.argv.length > 2 ? process.argv.slice(2) : Object.keys(WALKS);
  // Two at a time.
  const one = async () => {
    for (let name = names.shift(); name; name = names.shift()) await walk(browser, name, shoot).catch((error) => wrong.push(String(error)));
  };
  await Promise.all([one(), one()]);
  const page = await browser.newPage({ viewport: { width: 1600, height: 900 } });
  let brightest = { mean: 0 };
  for (const theme of THEMES) {
    for (const { stop, png } of theme === "day" ? [] : taken[theme]) {
      const { mean, ground } = await brightness(page, png);
      if (WHITE.includes(stop)) continue;
      if (theme === "red" && mean > brightest.mean) brightest = { stop, mean };
      if (theme === "red" && mean >= DIM) bright.push(`${stop} in red: mean luminance ${(mean * 100).toFixed(2)} %`);
      if (theme === "night" && ground > DARK && !stop.startsWith("harm/not-saved")) wrong.push(`${stop} at night: the ground has ${ground.toFixed(4)}`);
    }
    await sheet(page, theme);
  }
  console.log(`${Object.values(taken).flat().length} pictures in out/gallery; the brightest in red is ${brightest.stop} with ${(brightest.mean * 100).toFixed(2)} % (goal: below ${DIM * 100} %)`);
  if (bright.length > 0) console.log(bright.join("\n"));
  assert.equal(wrong.length, 0, wrong.join("\n"));
} finally {
  await browser.close();
}
