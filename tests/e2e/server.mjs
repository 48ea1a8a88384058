// A small server of FHIR on loopback that does what it is told.

import { once } from "node:events";
import { createServer } from "node:http";

const CAPABLE = { resourceType: "CapabilityStatement", fhirVersion: "4.0.1", rest: [{ mode: "server", interaction: [{ code: "transaction" }] }] };
/** What it finds wrong with a transaction. */
const outcome = (sent) => ({
  resourceType: "OperationOutcome",
  issue: [
    { severity: "error", code: "code-invalid", diagnostics: "No such unit in this list of units: mL", expression: ["Bundle.entry[4].resource.valueQuantity"] },
    { severity: "error", code: "business-rule", details: { text: "A practitioner has to be known here before anything by her is kept" }, expression: [`Bundle.entry[${sent.entry.findIndex(({ resource }) => resource.resourceType === "Practitioner")}]`] },
  ],
});

/** Starts it. `next` is what becomes of the next transactions: "take", a status, or "hang", which `go` ends. */
export async function fhirServer() {
  const told = { requests: [], next: [], go: () => undefined };
  const say = (answer, status, body) => answer.writeHead(status, { "content-type": "application/fhir+json" }).end(JSON.stringify(body));
  const server = createServer(async (request, answer) => {
    const parts = [];
    for await (const part of request) parts.push(part);
    if (request.method === "GET") return say(answer, 200, CAPABLE);
    const body = JSON.parse(Buffer.concat(parts).toString());
    told.requests.push({ headers: request.headers, body });
    const what = told.next.shift() ?? "take";
    if (typeof what === "number") return say(answer, what, what === 422 ? outcome(body) : {});
    if (what === "hang") await new Promise((go) => (told.go = go));
    return say(answer, 200, { resourceType: "Bundle", type: "transaction-response", entry: body.entry.map(() => ({ response: { status: "201 Created" } })) });
  });
  // A walk that fails leaves it behind.
  server.unref();
  server.listen(0, "127.0.0.1");
  await once(server, "listening");
  told.port = server.address().port;
  told.address = `http://127.0.0.1:${told.port}/fhir`;
  told.stop = () => {
    told.go();
    server.closeAllConnections();
    server.close();
  };
  return told;
}
