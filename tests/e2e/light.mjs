// How much light a screen gives.

/** The most that a screen in the dim red light may give: the mean relative luminance of its picture. */
export const DIM = 0.02;
/** A code for a camera is black on white in every light. */
export const WHITE = [
  "practice/recovery",
  "handover/code",
  ...["second-phone", "code-as-text", "code-not-seen", "compared", "answer"].map((stop) => `phones/${stop}`),
  ...["sheet", "join-code", "join-wrong-code", "welcome"].map((stop) => `sharing/${stop}`),
];
/** The luminance of #121212: no dark ground is lighter. */
export const DARK = 0.0061;

/** Mean relative luminance of a picture as WCAG has it, and that of the colour which most of it has; any page reckons it. */
export function brightness(page, png) {
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
