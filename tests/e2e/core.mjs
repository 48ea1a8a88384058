// What a test asks of a phone's page, and of the core behind it.

/** An element by the name that the tests have for it. */
export const at = (hand, name) => hand.page.locator(`[data-test="${name}"]`);

/** Asks the core itself. */
export async function call(hand, request) {
  const token = new URLSearchParams(new URL(hand.page.url()).hash.slice(1)).get("token");
  return hand.page.evaluate(
    async ([body, bearer]) => (await fetch("/call", { method: "POST", headers: { authorization: `Bearer ${bearer}` }, body })).json(),
    [JSON.stringify(request), token],
  );
}

export const now = { at: "now", ago_ms: 0 };
/** Writes a note into a birth. */
export const note = (hand, birth, text) => call(hand, { request: "record", birth, fact: { kind: "noted", data: { text } }, at: now });

/** Makes a backup, and tells where it lies. */
export async function backUp(hand) {
  await call(hand, { request: "make_backup" });
  for (;;) {
    const { asked } = await call(hand, { request: "backups" });
    if (asked.state === "made") return asked.path;
    if (asked.state !== "going") throw new Error(JSON.stringify(asked));
    await hand.page.waitForTimeout(50);
  }
}
