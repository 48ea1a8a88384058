// What every screen keeps to, whatever its size, light, letters and direction: nothing hangs over, nothing is cut, every
// button can be met. The sizes of buttons stand in CSS px.

const SIZES = [[320, 568], [360, 640], [411, 891], [768, 1024], [1280, 800]];
const THEMES = ["day", "night", "red"];
const TEXTS = [100, 200];
const DIRECTIONS = ["ltr", "rtl"];

/** Every look that a screen can have. */
export const ALL = SIZES.flatMap((size) => THEMES.flatMap((theme) => TEXTS.flatMap((text) => DIRECTIONS.map((direction) => ({ size, theme, text, direction })))));

/**
 * Three looks for the nth screen: the smallest size, where most goes wrong, and two of the others. Over any two dozen screens each
 * size meets each theme, text and direction.
 */
export function covering(n) {
  const sizes = [0, 1 + ((2 * n) % 4), 1 + ((2 * n + 1) % 4)];
  return sizes.map((size, s) => ({
    size: SIZES[size],
    theme: THEMES[(s + n) % 3],
    text: TEXTS[(s + Math.floor(n / 3)) % 2],
    direction: DIRECTIONS[(s + Math.floor(n / 6)) % 2],
  }));
}

export const named = ({ size, theme, text, direction }) => `${size.join("x")} ${theme} ${text} % ${direction}`;

/** Gives the page a look, and waits until it is laid out. */
export async function dress(page, { size: [width, height], theme, text = 100, direction = "ltr" }) {
  await page.setViewportSize({ width, height });
  await page.evaluate(
    ([theme, text, direction]) => {
      const { dataset, style } = document.documentElement;
      [dataset.theme, style.fontSize, document.documentElement.dir] = [theme, text === 100 ? "" : `${text}%`, direction];
      return new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)));
    },
    [theme, text, direction],
  );
}

/** The look in which the walks go on. */
export const USUAL = { size: [360, 740], theme: "day" };

/** What a screen fails to keep to, as it is now. */
export const faults = (page, { text }) => page.evaluate(look, text);

/** Runs in the page; `text` is the size of the letters in percent. */
function look(text) {
  const [width, height] = [document.documentElement.clientWidth, window.innerHeight];
  const found = [];
  const name = (node) => {
    const named = node.closest("[data-test]");
    return `<${node.tagName.toLowerCase()}${named ? ` in ${named.dataset.test}` : ""}> ${node.textContent.trim().replace(/\s+/g, " ").slice(0, 40)}`;
  };
  const seen = (node) => node.checkVisibility({ visibilityProperty: true, opacityProperty: true }) && !node.closest("[inert], .heard-only, .unseen");
  // Signs and times along the axis of a picture are a drawing: they lie where their time is, and a touch finds the nearest.
  const drawn = (node) => node.closest('[data-test="picture-axis"], [data-test="point"]') !== null;
  const all = [...document.querySelectorAll("body *")].filter((node) => seen(node) && !drawn(node));

  const over = document.documentElement.scrollWidth - width;
  if (over > 0) found.push(`the page is ${over} px too wide`);
  for (const node of all) {
    if (node instanceof SVGElement || node.matches("input, textarea")) continue;
    const { overflowX, overflowY } = getComputedStyle(node);
    const [across, down] = [node.scrollWidth - node.clientWidth, node.scrollHeight - node.clientHeight];
    if (across > 1 && overflowX !== "visible" && node.clientWidth > 0) found.push(`${across} px cut or scrolled across: ${name(node)}`);
    // What is cut short shows in whole at a touch.
    if (node.closest('[aria-expanded="false"]')) continue;
    if (down > 1 && ["hidden", "clip"].includes(overflowY) && node.clientHeight > 0) found.push(`${down} px cut below: ${name(node)}`);
  }

  // Each piece of text stands in its button, and on the screen.
  const pieces = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  for (let piece = pieces.nextNode(); piece; piece = pieces.nextNode()) {
    const parent = piece.parentElement;
    if (!piece.data.trim() || !seen(parent) || drawn(parent) || parent.closest("svg, pre, script, style")) continue;
    const range = document.createRange();
    range.selectNodeContents(piece);
    const button = parent.closest("button:not([aria-expanded='false']), label.button, summary")?.getBoundingClientRect();
    for (const box of range.getClientRects()) {
      if (box.width < 1) continue;
      if (box.left < -1 || box.right > width + 1) found.push(`text over the edge of the screen: ${name(parent)}`);
      const out = button && (box.left < button.left - 1 || box.right > button.right + 1 || box.top < button.top - 2 || box.bottom > button.bottom + 2);
      if (out) found.push(`text out of its button: ${name(parent)}`);
    }
  }

  const primary = all.filter((node) => node.matches("[data-primary]"));
  const boxes = primary.map((node) => node.getBoundingClientRect());
  for (const [n, box] of boxes.entries()) {
    const what = name(primary[n]);
    if (box.height < 127.5) found.push(`a mark only ${box.height} px high: ${what}`);
    if (box.left < 15.5 || box.right > width - 15.5) found.push(`a mark in the outer 16 px: ${what}`);
    for (const other of boxes.slice(n + 1)) {
      const gap = Math.max(other.top - box.bottom, box.top - other.bottom, other.left - box.right, box.left - other.right);
      if (gap < 23.5) found.push(`marks only ${gap} px apart: ${what}`);
    }
  }
  if (primary.length > 4) found.push(`${primary.length} marks on one screen`);
  // Twice as large, a mark may reach further down than the first screen.
  const corners = [2, 40, 78].flatMap((x) => [x, width - x]).flatMap((x) => [2, 40, 78].map((y) => [x, height - y]));
  if (text === 100 && corners.some(([x, y]) => document.elementFromPoint(x, y)?.closest("[data-primary]"))) found.push("a mark in a corner below");

  for (const node of all.filter((one) => one.matches("button, label.button, summary, a[href]"))) {
    const { width: wide, height: high } = node.getBoundingClientRect();
    if (high < 59.5 || wide < 47.5) found.push(`a button only ${Math.round(wide)} x ${Math.round(high)}: ${name(node)}`);
  }
  return [...new Set(found)];
}
