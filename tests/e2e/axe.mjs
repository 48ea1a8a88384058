// What axe-core finds on the page as it is: WCAG 2.2 at A and AA, and the contrast of AAA.

import { readFileSync } from "node:fs";
import { createRequire } from "node:module";

const SOURCE = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");
const TAGS = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"];

/** One line for each thing that is found. */
export async function axeFinds(page) {
  if (!(await page.evaluate(() => "axe" in window))) await page.evaluate(SOURCE);
  return page.evaluate(async (values) => {
    const options = { runOnly: { type: "tag", values }, rules: { "color-contrast-enhanced": { enabled: true } }, resultTypes: ["violations"] };
    const { violations } = await window.axe.run(document, options);
    return violations.flatMap(({ id, nodes }) => nodes.map(({ target, failureSummary }) => `${id} at ${target.join(" ")}: ${failureSummary.replace(/\s+/g, " ").slice(0, 200)}`));
  }, TAGS);
}
