// Scripting time of each frame of a drag, long tasks, first-load bytes and time to the first drawing on a slowed
// profile, against spec 90: `node --import tsx e2e/drag-frames.mjs`. Not a test: it prints what this machine does.
import { cpus } from "node:os";
import { gzipSync } from "node:zlib";
import { launch } from "./browser.mjs";
import { serveWorkbench } from "./workbench.mjs";

const served = await serveWorkbench();
const browser = await launch();
const context = await browser.newContext({ viewport: { width: 1440, height: 900 } });
const page = await context.newPage();
let scriptBytes = 0;
page.on("response", async (response) => {
  if (response.url().endsWith(".js") && !response.url().includes("sw.js"))
    scriptBytes += gzipSync(await response.body()).length;
});
await page.goto(served.url);
await page.waitForSelector(".verdict h2");
const firstBytes = scriptBytes;
await page.waitForTimeout(1000);
await page.evaluate(() => {
  window.longTasks = [];
  new PerformanceObserver((list) => {
    for (const entry of list.getEntries()) window.longTasks.push(entry.duration);
  }).observe({ entryTypes: ["longtask"] });
});
const box = await page.locator('[data-handle="postPin"]').boundingBox();
const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
const client = await context.newCDPSession(page);
await client.send("Tracing.start", {
  categories: "devtools.timeline,disabled-by-default-v8.cpu_profiler",
  transferMode: "ReportEvents",
});
const events = [];
client.on("Tracing.dataCollected", ({ value }) => events.push(...value));
await page.mouse.move(x, y);
await page.mouse.down();
for (let step = 1; step <= 120; step += 1) {
  await page.mouse.move(x - 40 * Math.sin(step / 12), y + 30 * Math.sin(step / 9));
  await page.waitForTimeout(16);
}
await page.mouse.up();
await client.send("Tracing.end");
await new Promise((ended) => client.once("Tracing.tracingComplete", ended));
// All script of the page's own thread: handlers, React's tasks after them, animation frames and microtasks.
const kinds = new Set(["EventDispatch", "FunctionCall", "RunMicrotasks", "FireAnimationFrame", "TimerFire"]);
const scripts = events
  .filter((event) => kinds.has(event.name) && event.dur)
  .sort((a, b) => a.ts - b.ts || b.dur - a.dur);
const outermost = [];
let reached = 0;
for (const { ts, dur, name, args } of scripts) {
  if (ts < reached) continue;
  reached = ts + dur;
  outermost.push({
    ts,
    ms: dur / 1000,
    starts: name === "EventDispatch" && args?.data?.type === "pointermove",
  });
}
const frames = [];
for (const { ms, starts } of outermost) {
  if (starts) frames.push(0);
  if (frames.length > 0) frames[frames.length - 1] += ms;
}
const spent = frames.sort((a, b) => a - b);
const at = (share) => spent[Math.floor(share * (spent.length - 1))]?.toFixed(1);
const longTasks = await page.evaluate(() => window.longTasks);
console.log(`machine: ${cpus()[0]?.model}, ${cpus().length} cores`);
console.log(
  `scripting per drag frame: median ${at(0.5)} ms, 95th percentile ${at(0.95)} ms, most ${at(1)} ms (${spent.length} frames; at most 8 ms asked)`,
);
console.log(`long tasks while dragging: ${longTasks.length} (none asked)`);
console.log(`first load: ${(firstBytes / 1000).toFixed(0)} kB of script, zipped (at most 250 kB asked)`);
await context.close();

const slow = await browser.newContext({ viewport: { width: 390, height: 844 } });
const phone = await slow.newPage();
const throttle = await slow.newCDPSession(phone);
await throttle.send("Network.enable");
await throttle.send("Network.emulateNetworkConditions", {
  offline: false,
  latency: 150,
  downloadThroughput: 1.6e6 / 8,
  uploadThroughput: 750e3 / 8,
});
await throttle.send("Emulation.setCPUThrottlingRate", { rate: 4 });
const started = performance.now();
await phone.goto(served.url);
await phone.waitForSelector(".verdict h2");
console.log(
  `first drawing, 4 × slower CPU and slow 4G: ${((performance.now() - started) / 1000).toFixed(2)} s (at most 2 s asked)`,
);
await browser.close();
await served.stop();
