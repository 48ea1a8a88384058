// The server of a practice, and a birth on its way to it.

import { call } from "../core.mjs";
import { fhirServer } from "../server.mjs";
import { born } from "./start.mjs";

export const sending = {
  "no-server": async (d) => {
    d.server = await fhirServer();
    await born(d);
    await d.tap("tab-record");
    await d.tap("hand-out");
    await d.find("sending-no-server");
  },
  refused: async (d) => {
    await call(d.hand, { request: "set_server", address: d.server.address, token: "s3cr3t" });
    d.server.next.push(422, "hang");
    await d.tap("sending-ask");
    await d.find("sending-entries");
  },
  going: async (d) => {
    await d.tap("sending-now");
    await d.find("sending-going");
  },
  taken: async (d) => {
    d.server.go();
    await d.find("sending-taken");
  },
  server: async (d) => {
    d.server.stop();
    await d.hand.anew();
    await d.tap("menu");
    await d.tap("practice");
    await d.tap("server");
    await d.find("server-try");
  },
  "server-tried": async (d) => {
    await d.tap("server-try");
    await d.find("server-tried");
  },
  "server-error": async (d) => {
    await d.type("server-address", "http://records.example");
    await d.tap("server-save");
    await d.find("server-error");
  },
};
