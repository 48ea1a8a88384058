// How quick the page is on a phone six times slower than this machine: node tests/e2e/speed.mjs [PART ...], by `make bench`.
// Prints each figure beside its goal (ours) and, where there is one, beside its floor: the same measure, in the same run, of
// a page that is one button and nothing else. What else runs on the machine counts against both.

import { once } from "node:events";
import { mkdtempSync, rmSync } from "node:fs";
import { createServer } from "node:http";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { setTimeout as sleep } from "node:timers/promises";
import { gzipSync } from "node:zlib";

import { createPractice } from "./birth.mjs";
import { Phone, launch, startBridge } from "./browser.mjs";
import { call } from "./core.mjs";
import { latest } from "./screens/start.mjs";

const SLOWER = 6;
const CYCLES = 20;
const IDLE_MS = 60_000;
/** How often the page asks how the birth stands. */
const ANSWER_MS = 5_000;
const LONG_MS = 50;
const TRACED_MS = 30_000;
const HOURS = 8;
const SLICE_MS = 5 * 60_000;
/** Paints this close together are one repaint. */
const FRAME_MS = 60;

const BARE = `<!doctype html><meta name="viewport" content="width=device-width"><button data-primary style="width: 300px; height: 300px">0</button>
<script>document.querySelector("button").onpointerdown = ({ target }) => (target.textContent = Number(target.textContent) + 1);</script>`;

function tell(what, figure, unit, goal, floor = null) {
  const short = (of) => Math.round(of * 10) / 10;
  const beside = floor === null ? "" : `; floor ${short(floor)}, ratio ${(figure / floor).toFixed(2)}`;
  console.log(`${figure <= goal ? "met   " : "MISSED"}  ${what}: ${short(figure)} ${unit} (goal: at most ${goal}${beside})`);
}

/** The value below which 95 of 100 lie. */
const p95 = (values) => [...values].sort((a, b) => a - b)[Math.ceil(values.length * 0.95) - 1] ?? 0;

async function slow(page) {
  const cdp = await page.context().newCDPSession(page);
  await cdp.send("Emulation.setCPUThrottlingRate", { rate: SLOWER });
  return cdp;
}

/** Notes interactions and long tasks from the page's start on; runs in the page. */
function observe() {
  window.noted = { events: [], usable: 0 };
  new PerformanceObserver((list) => window.noted.events.push(...list.getEntries().filter((one) => one.interactionId).map((one) => [one.name, one.interactionId, one.duration])))
    .observe({ type: "event", durationThreshold: 16, buffered: true });
  const watch = new MutationObserver(() => {
    if (!document.querySelector("[data-primary]")) return;
    watch.disconnect();
    requestAnimationFrame(() => setTimeout(() => (window.noted.usable = performance.now())));
  });
  watch.observe(document, { childList: true, subtree: true });
}

/** The longest event of each interaction, in ms; what the browser does not tell took less than its 16 ms. */
function interactions(events) {
  const longest = new Map();
  for (const [, id, duration] of events) longest.set(id, Math.max(longest.get(id) ?? 0, duration));
  return [...longest.values()];
}

/** When a page has its first frame with content, and when its first mark can be touched: the median of five, in ms. */
async function started(browser, address) {
  const starts = [];
  for (let n = 0; n < 5; n += 1) {
    const context = await browser.newContext({ viewport: { width: 360, height: 740 }, hasTouch: true, isMobile: true });
    await context.addInitScript(observe);
    const page = await context.newPage();
    await slow(page);
    await page.goto(address);
    await page.waitForFunction(() => window.noted.usable > 0 && performance.getEntriesByName("first-contentful-paint").length > 0);
    starts.push(await page.evaluate(() => [performance.getEntriesByName("first-contentful-paint")[0].startTime, window.noted.usable]));
    await context.close();
  }
  const middle = (of) => of.sort((a, b) => a - b)[Math.floor(of.length / 2)];
  return { first: middle(starts.map(([first]) => first)), usable: middle(starts.map(([, usable]) => usable)) };
}

async function coldStart(browser, address, bare) {
  const [page, floor] = [await started(browser, address), await started(browser, bare)];
  tell("cold start, first frame with content (median of 5)", page.first, "ms", 1_000, floor.first);
  tell("cold start, the button for the birth can be touched", page.usable, "ms", 2_500, floor.usable);
}

/** Bytes of scripts and styles, gzipped, that were loaded by the time the timing screen stood. */
async function size(browser, address) {
  const context = await browser.newContext({ viewport: { width: 360, height: 740 }, hasTouch: true });
  const page = await context.newPage();
  const bodies = [];
  page.on("response", (answer) => /\.(js|css)$/.test(new URL(answer.url()).pathname) && bodies.push(answer.body()));
  await page.goto(address);
  await page.locator('[data-test="birth"]').first().tap();
  await page.locator('[data-test="clock"]').waitFor();
  await sleep(1_000);
  const bytes = (await Promise.all(bodies)).reduce((sum, body) => sum + gzipSync(body, { level: 9 }).length, 0);
  tell("scripts and styles loaded for the timing screen, gzipped", bytes / 1024, "KiB", 150);
  await context.close();
}

/** Traces what is done meanwhile. */
async function traced(browser, page, work) {
  await browser.startTracing(page, { categories: ["toplevel", "devtools.timeline", "disabled-by-default-devtools.timeline"] });
  await work();
  return JSON.parse((await browser.stopTracing()).toString()).traceEvents;
}

/** The process of the page that was traced, and that of the page which stood beside it. */
function processes(trace) {
  const page = trace.find(({ name }) => name === "TracingStartedInBrowser").args.data.frames[0].processId;
  return [page, trace.find(({ name, pid }) => name === "TimerFire" && pid !== page).pid];
}

/**
 * Tasks of a page's own thread, longest first: the time that each had the processor, ms, so that another program's turn is not
 * counted; and whether most of it was the browser's own collecting of garbage.
 */
function tasksOf(trace, pid) {
  const { tid } = trace.find((one) => one.name === "thread_name" && one.args.name === "CrRendererMain" && one.pid === pid);
  const mine = trace.filter((one) => one.pid === pid && one.tid === tid);
  const collected = mine.filter(({ name }) => name === "MajorGC" || name === "MinorGC");
  const garbage = ({ ts, dur, tdur }) => collected.some((one) => one.ts >= ts && one.ts <= ts + dur && (one.tdur ?? 0) > tdur / 2);
  const tasks = mine.filter(({ name, tdur }) => name === "ThreadControllerImpl::RunTask" && tdur > 0);
  return tasks.map((task) => ({ ms: task.tdur / 1000, garbage: garbage(task) })).sort((a, b) => b.ms - a.ms);
}

/** Marks and takes back so many times; gives the number of touches. */
async function cycle(hand, times) {
  for (let n = 0; n < times; n += 1) {
    await hand.tap('[data-test="mark-cord_clamped"]');
    await hand.find('[data-test="undo"]');
    await sleep(1_400);
    await hand.tap('[data-test="undo"]');
    await hand.page.locator('[data-test="undo"]').waitFor({ state: "detached" });
    await sleep(1_400);
  }
  return 2 * times;
}

/** How long each of the touches took that `touch` makes, in ms; one that is not told took less than 16. */
async function touches(hand, touch) {
  await hand.run("window.noted.events.length = 0");
  const taps = await touch();
  const { events } = await hand.run("return window.noted");
  const told = interactions(events);
  return [...told, ...Array(Math.max(0, taps - told.length)).fill(8)];
}

async function marks(hand, browser, bare) {
  const one = await Phone.open(browser, bare, { width: 360, height: 740, script: observe });
  await slow(one.page);
  const floor = await touches(one, async () => {
    for (let n = 0; n < 2 * CYCLES; n += 1) {
      await one.tap("button");
      await sleep(700);
    }
    return 2 * CYCLES;
  });
  await one.page.context().close();
  const all = await touches(hand, () => cycle(hand, CYCLES));
  tell(`touch to next paint, p95 of ${all.length} marks and undos ('event' entries, in steps of 8 ms)`, p95(all), "ms", 50, p95(floor));
  tell("the longest of them", Math.max(...all), "ms", 100, Math.max(...floor));
}

/**
 * By the processor's time without the throttle, taken so many times: so another program's turn does not count. The bare page
 * stands beside it in the same trace, and reads as long an answer as often, so that the browser has garbage there as well.
 */
async function longTasks(hand, browser, bare) {
  const beside = await Phone.open(browser, bare, { width: 360, height: 740 });
  const { birth } = await latest({ hand });
  const answer = JSON.stringify(await call(hand, { request: "birth", birth }));
  await beside.page.evaluate(([text, every]) => void setInterval(() => (window.kept = JSON.parse(text)), every), [answer, ANSWER_MS]);
  const trace = await traced(browser, hand.page, async () => {
    await cycle(hand, 5);
    await sleep(IDLE_MS);
  });
  await beside.page.context().close();
  const [tasks, floor] = processes(trace).map((pid) => tasksOf(trace, pid).map(({ ms, garbage }) => ({ ms: ms * SLOWER, garbage })));
  const long = (of, garbage) => of.filter((task) => task.ms > LONG_MS && task.garbage === garbage);
  const longest = (of) => of.find(({ garbage }) => garbage)?.ms ?? 0;
  tell(`tasks over ${LONG_MS} ms, of ${tasks.length} over 5 marks, their undos and ${IDLE_MS / 1000} s of rest`, long(tasks, false).length, "", 0);
  console.log(`        the longest ${tasks.filter(({ garbage }) => !garbage).slice(0, 5).map(({ ms }) => Math.round(ms)).join(", ")} ms`);
  tell("the longest collecting of garbage by the browser", longest(tasks), "ms", LONG_MS, longest(floor));
}

async function repaints(browser, hand) {
  const trace = await traced(browser, hand.page, () => sleep(TRACED_MS));
  const starts = trace.filter((one) => one.name === "Paint").map((one) => one.ts / 1000).sort((a, b) => a - b);
  const frames = starts.filter((at, n) => n === 0 || at - starts[n - 1] > FRAME_MS).length;
  tell("repaints in a second of rest, third stage running", frames / (TRACED_MS / 1000), "", 1.1);
}

async function memory(browser, bridge) {
  const script = () => localStorage.setItem("secundine-settings", JSON.stringify({ restAfter: 30, sound: false, vibration: false }));
  const hand = await Phone.open(browser, bridge.address, { clock: true, script });
  await hand.tap('[data-test="birth"]');
  await hand.find('[data-test="clock"]');
  const cdp = await hand.page.context().newCDPSession(hand.page);
  await cdp.send("Performance.enable");
  const used = async () => {
    for (let n = 0; n < 3; n += 1) await cdp.send("HeapProfiler.collectGarbage");
    const { metrics } = await cdp.send("Performance.getMetrics");
    const of = (name) => metrics.find((one) => one.name === name).value;
    return { heap: of("JSHeapUsedSize") / 1024, nodes: of("Nodes"), listeners: of("JSEventListeners") };
  };
  const on = async (ms) => {
    for (let passed = 0; passed < ms; passed += SLICE_MS) {
      await hand.run('document.body.dispatchEvent(new PointerEvent("pointerdown", { bubbles: true }))');
      await hand.page.clock.runFor(SLICE_MS);
      await hand.page.evaluate(() => fetch("/"));
    }
  };
  // The first half hour fills what is kept for good.
  await on(30 * 60_000);
  const before = await used();
  await on((HOURS / 2) * 3_600_000);
  const middle = await used();
  await on((HOURS / 2) * 3_600_000);
  const after = await used();
  console.log(`        heap of the page: ${[before, middle, after].map(({ heap }) => Math.round(heap)).join(", ")} KiB after half an hour, ${HOURS / 2} and ${HOURS} hours more`);
  // What is said for the first time is kept; what is lost would go on growing.
  tell(`heap that the last ${HOURS / 2} hours added`, after.heap - middle.heap, "KiB", 64);
  tell("elements and listeners more", after.nodes - before.nodes + after.listeners - before.listeners, "", 50);
}

const PARTS = ["start", "size", "marks", "tasks", "repaints", "memory"];
const wanted = process.argv.length > 2 ? process.argv.slice(2) : PARTS;
for (const part of wanted) if (!PARTS.includes(part)) throw new Error(`no part ${part}: ${PARTS.join(", ")}`);

const folder = mkdtempSync(join(tmpdir(), "secundine-"));
const bridge = await startBridge(folder);
const browser = await launch();
const server = createServer((_, answer) => answer.setHeader("content-type", "text/html").end(BARE)).listen(0, "localhost");
await once(server, "listening");
const bare = `http://localhost:${server.address().port}/`;
try {
  const hand = await Phone.open(browser, bridge.address, { width: 360, height: 740, script: observe });
  await createPractice(hand);
  if (wanted.includes("start")) await coldStart(browser, bridge.address, bare);
  await hand.tap('[data-test="baby-born"]');
  await hand.find('[data-test="mark-cord_clamped"]');
  if (wanted.includes("size")) await size(browser, bridge.address);
  const cdp = await slow(hand.page);
  await sleep(1_400);
  if (wanted.includes("marks")) await marks(hand, browser, bare);
  await cdp.send("Emulation.setCPUThrottlingRate", { rate: 1 });
  if (wanted.includes("tasks")) await longTasks(hand, browser, bare);
  if (wanted.includes("repaints")) await repaints(browser, hand);
  await hand.page.context().close();
  if (wanted.includes("memory")) await memory(browser, bridge);
} finally {
  await browser.close();
  await bridge.stop();
  server.close();
  server.closeAllConnections();
  rmSync(folder, { recursive: true, force: true });
}
