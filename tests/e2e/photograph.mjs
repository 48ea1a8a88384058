// A photograph of a placenta beside two cards, drawn by the browser, and a finger on it.

import { at } from "./core.mjs";

export const [WIDTH, HEIGHT, FOCAL] = [3000, 2250, 2250];

/** A camera 520 mm above a table, tilted by so many degrees: where a point of the table, mm, lies in its picture. */
export function camera(degrees) {
  const [sin, cos] = [Math.sin((degrees * Math.PI) / 180), Math.cos((degrees * Math.PI) / 180)];
  return ([x, y]) => {
    const [down, deep] = [-y * cos, 520 / cos - y * sin];
    return [WIDTH / 2 + (FOCAL * x) / deep, HEIGHT / 2 + (FOCAL * down) / deep];
  };
}

const card = (x, y) => [[-27, 42.8], [27, 42.8], [27, -42.8], [-27, -42.8]].map(([a, b]) => [x + (a * 53.98) / 54, y + b]);
export const CARDS = [card(-160, 5), card(165, -10)];
/** 190 by 160 mm. */
export const DISC = Array.from({ length: 120 }, (_, n) => (n * Math.PI) / 60).map((angle) => [95 * Math.cos(angle), 80 * Math.sin(angle)]);

/** The scene as a JPEG file, drawn by the browser. */
export async function photograph(hand, seen) {
  const shapes = { cards: CARDS.map((corners) => corners.map(seen)), disc: DISC.map(seen), cord: seen([40, 10]) };
  const letters = await hand.page.evaluate(
    async ([width, height, { cards, disc, cord }]) => {
      const canvas = Object.assign(document.createElement("canvas"), { width, height });
      const pen = canvas.getContext("2d");
      const fill = (points, colour) => {
        pen.fillStyle = colour;
        pen.beginPath();
        points.forEach(([x, y], n) => (n ? pen.lineTo(x, y) : pen.moveTo(x, y)));
        pen.fill();
      };
      fill([[0, 0], [width, 0], [width, height], [0, height]], "#cfd6cf");
      for (const corners of cards) fill(corners, "#f7f4ea");
      fill(disc, "#7a1f2b");
      pen.fillStyle = "#d8c9d0";
      pen.beginPath();
      pen.arc(...cord, 40, 0, 7);
      pen.fill();
      const blob = await new Promise((done) => canvas.toBlob(done, "image/jpeg", 0.9));
      const bytes = new Uint8Array(await blob.arrayBuffer());
      let text = "";
      for (const byte of bytes) text += String.fromCharCode(byte);
      return btoa(text);
    },
    [WIDTH, HEIGHT, shapes],
  );
  return { name: "IMG_0001.jpg", mimeType: "image/jpeg", buffer: Buffer.from(letters, "base64") };
}

/** A touch of the photograph at a place of it, on over further ones; gives what takes a picture, if asked, and lifts the finger. */
export async function touch(hand, [x, y], further = []) {
  const box = await at(hand, "photo-stage").boundingBox();
  const on = ([x, y]) => [box.x + (x / WIDTH) * box.width, box.y + (y / HEIGHT) * box.width * (HEIGHT / WIDTH)];
  await hand.page.mouse.move(...on([x, y]));
  await hand.page.mouse.down();
  for (const place of further) await hand.page.mouse.move(...on(place));
  return async (path) => {
    if (path) await hand.page.screenshot({ path });
    await hand.page.mouse.up();
  };
}
