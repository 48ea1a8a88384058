// A birth is sent to a server from the page: set in the practice, asked for, waiting, refused, on its way, taken.

import assert from "node:assert/strict";
import { after, before, test } from "node:test";

import { createPractice } from "./birth.mjs";
import { at, emptyPhone, launch, picturesIn } from "./browser.mjs";
import { call, note } from "./core.mjs";
import { fhirServer } from "./server.mjs";

const pictures = picturesIn("sending");
let browser;
before(async () => {
  browser = await launch();
});
after(() => browser.close());

async function begin(t) {
  const server = await fhirServer();
  t.after(() => server.stop());
  const { hand } = await emptyPhone(t, browser, { scale: 2 });
  await createPractice(hand);
  const tap = (name) => hand.tap(`[data-test="${name}"]`);
  const shows = (name, words) => hand.page.locator(`[data-test="${name}"]`, { hasText: words }).first().waitFor();
  return { server, hand, tap, shows, look: pictures(hand) };
}

/** Sets the server by hand, as far as the address. */
async function toServer(hand, tap) {
  await hand.find('[data-test="menu"]');
  await tap("menu");
  await tap("practice");
  await tap("server");
  await hand.find('[data-test="server-now"]');
}

async function toFiles(hand, tap) {
  await tap("baby-born");
  await hand.find('[data-test="mark-cord_clamped"]');
  await tap("tab-record");
  await tap("hand-out");
  await hand.find('[data-test="sending-ask"], [data-test="sending-no-server"]');
}

test("the server is set, asked what it is, and its token never shown", async (t) => {
  const { server, hand, tap, shows, look } = await begin(t);
  await toServer(hand, tap);
  await shows("server-now", "No server is set");
  await hand.type('[data-test="server-address"]', "http://records.example/r4");
  await tap("server-save");
  await shows("server-error", "only sent over https");
  await look("not-secure");
  await hand.type('[data-test="server-address"]', `${server.address}/`);
  await hand.type('[data-test="server-token"]', "s3cr3t-token");
  assert.equal(await at(hand.page, "server-token").getAttribute("type"), "password");
  await tap("server-save");
  await shows("server-now", server.address);
  assert.equal(await at(hand.page, "server-token").inputValue(), "");
  assert.ok(!(await hand.page.content()).includes("s3cr3t-token"));
  await tap("server-try");
  await shows("server-tried", "takes transactions");
  for (const theme of ["day", "night", "red"]) {
    await hand.run(`document.documentElement.dataset.theme = "${theme}"`);
    await look(`server-${theme}`);
  }
  const view = await call(hand, { request: "server" });
  assert.deepEqual([view.address, view.token], [server.address, true]);
  assert.ok(!JSON.stringify(view).includes("s3cr3t"));
  // Without a hand on the glass.
  await at(hand.page, "server-remove").focus();
  await hand.page.keyboard.press("Enter");
  await shows("server-now", "No server is set");
  assert.deepEqual(hand.problems, []);
});

test("a birth waits, is refused entry by entry, goes, and is taken", async (t) => {
  const { server, hand, tap, shows, look } = await begin(t);
  await toFiles(hand, tap);
  await shows("sending-no-server", "No server is set");
  // Nobody listens at this place.
  await call(hand, { request: "set_server", address: "http://127.0.0.1:9", token: null });
  await hand.find('[data-test="sending-ask"]');
  await at(hand.page, "sending-ask").focus();
  await hand.page.keyboard.press("Enter");
  await shows("sending-waiting", "No connection to the server");
  await shows("sending-waiting", "tried again by itself");
  await look("waiting");
  await tap("sending-take-back");
  await hand.find('[data-test="sending-ask"]');

  await call(hand, { request: "set_server", address: server.address, token: "s3cr3t-token" });
  server.next.push(422, "hang");
  await tap("sending-ask");
  await shows("sending-waiting", "Not taken");
  await shows("sending-entries", "No such unit in this list of units: mL (code-invalid)");
  await shows("sending-entries", "(Practitioner): A practitioner has to be known here");
  for (const theme of ["day", "night", "red"]) {
    await hand.run(`document.documentElement.dataset.theme = "${theme}"; document.querySelector("[data-test=sending-waiting]").scrollIntoView({ block: "center" })`);
    await look(`refused-${theme}`);
  }
  await hand.run('document.documentElement.dataset.theme = "day"');
  await tap("sending-now");
  await shows("sending-going", "Waiting for the answer");
  await look("going");
  // A mark does not wait for the server.
  const { births } = await call(hand, { request: "births", skip: 0, take: 1 });
  assert.ok((await note(hand, births[0].birth, "in the meantime")).entry);
  assert.equal(server.requests.length, 2);
  server.go();
  await shows("sending-taken", "Something was written since");
  await tap("sending-ask");
  await shows("sending-taken", "Nothing was written since");
  assert.equal(await hand.has('[data-test="sending-ask"]'), false);
  await hand.page.locator('[data-test="given"] li', { hasText: `Given to server, ${server.address}` }).nth(1).waitFor();
  await look("taken");
  assert.equal(server.requests.length, 3);
  assert.equal(server.requests[2].headers.authorization, "Bearer s3cr3t-token");
  assert.deepEqual(hand.problems, []);
});

test("what waits goes by itself when there is a connection again", async (t) => {
  const { server, hand, tap, shows } = await begin(t);
  await toFiles(hand, tap);
  await call(hand, { request: "set_server", address: "http://127.0.0.1:9", token: null });
  await tap("sending-ask");
  await shows("sending-waiting", "No connection");
  await call(hand, { request: "set_server", address: server.address, token: null });
  await hand.page.context().setOffline(true);
  assert.equal(server.requests.length, 0);
  await hand.page.context().setOffline(false);
  await hand.find('[data-test="sending-taken"]');
  assert.equal(server.requests.length, 1);
});
