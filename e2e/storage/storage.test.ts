// The store on a real browser's database: the contract, a full device, two tabs, a browser that is killed.
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { build } from "esbuild";
import { type Browser, type BrowserContext, chromium, type Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { chromiumArguments, chromiumPath } from "../browser.mjs";

const origin = "http://pintle.localhost";
const address = `${origin}/`;
let script = "";
let browser: Browser;

beforeAll(async () => {
  const made = await build({
    entryPoints: [join(import.meta.dirname, "storage-page.ts")],
    bundle: true,
    format: "esm",
    write: false,
  });
  script = made.outputFiles[0]?.text ?? "";
  browser = await chromium.launch({ executablePath: chromiumPath() ?? "", args: chromiumArguments });
}, 60_000);

afterAll(() => browser.close());

async function tabIn(context: BrowserContext): Promise<Page> {
  const page = await context.newPage();
  await page.route(`${address}**`, (route) =>
    route.fulfill(
      route.request().url().endsWith("page.js")
        ? { contentType: "text/javascript", body: script }
        : { contentType: "text/html", body: '<!doctype html><script type="module" src="/page.js"></script>' },
    ),
  );
  await page.goto(address);
  await page.waitForFunction("globalThis.trial !== undefined");
  return page;
}

const freshTab = async () => tabIn(await browser.newContext());

describe("in a real browser", () => {
  test("[T1] IndexedDB keeps the contract of a storage", async () => {
    const page = await freshTab();
    const found = await page.evaluate<{ name: string; wrong: string | null }[]>("trial.contract()");
    expect(found.length).toBeGreaterThan(8);
    expect(found.filter(({ wrong }) => wrong !== null)).toEqual([]);
  });

  test("[T1] two tabs see each other's edits, and both keep them", async () => {
    const context = await browser.newContext();
    const [one, two] = [await tabIn(context), await tabIn(context)];
    await one.evaluate("trial.open(true)");
    await two.evaluate("trial.open(false)");
    await one.evaluate('trial.set("title", "from one")');
    await two.evaluate('trial.set("note", "from two")');
    for (const page of [one, two]) {
      await page.waitForFunction('trial.read().title === "from one" && trial.read().note === "from two"');
      await page.evaluate("trial.retry()");
      expect(await page.evaluate("trial.keeping().state")).toBe("saved");
    }
    await context.pages()[0]?.reload();
    expect(await one.evaluate("trial.open(false)")).toMatchObject({ title: "from one", note: "from two" });
  });

  test("[T1] a full device is said; nothing typed is lost, and all is kept once there is room", async () => {
    const page = await freshTab();
    const session = await page.context().newCDPSession(page);
    // Before the first write: Chromium remembers for a while how much room there was.
    await session.send("Storage.overrideQuotaForOrigin", { origin, quotaSize: 200_000 });
    await page.evaluate("trial.open(true)");
    expect(await page.evaluate("trial.keeping()")).toMatchObject({ state: "saved" });
    // Of random digits: Chromium presses together what repeats before it asks for room.
    await page.evaluate(
      'trial.set("note", Array.from({ length: 600_000 }, () => Math.floor(Math.random() * 36).toString(36)).join(""))',
    );
    await page.evaluate('trial.set("title", "typed while full")');
    await page.evaluate("trial.retry()");
    expect(await page.evaluate("trial.keeping()")).toMatchObject({ state: "full" });
    expect(await page.evaluate("trial.read().title")).toBe("typed while full");
    await session.send("Storage.overrideQuotaForOrigin", { origin });
    expect(await page.evaluate("trial.retry()")).toMatchObject({ state: "saved" });
    await page.reload();
    expect(await page.evaluate("trial.open(false)")).toMatchObject({ title: "typed while full" });
    expect(await page.evaluate("trial.read().note.length")).toBe(600_000);
  });

  test("[T1] site data that are cleared under an open job are written anew with the next edit", async () => {
    const page = await freshTab();
    const session = await page.context().newCDPSession(page);
    await page.evaluate("trial.open(true)");
    await page.evaluate('trial.set("title", "before")');
    await page.evaluate("trial.retry()");
    await session.send("Storage.clearDataForOrigin", { origin, storageTypes: "indexeddb" });
    await page.evaluate('trial.set("note", "after")');
    expect(await page.evaluate("trial.retry()")).toMatchObject({ state: "saved" });
    await page.reload();
    expect(await page.evaluate("trial.open(false)")).toMatchObject({ title: "before", note: "after" });
  });

  test("[T9] a browser that is killed in the middle of editing has kept what it said it kept", async () => {
    const profile = mkdtempSync(join(tmpdir(), "pintle-profile-"));
    const start = () =>
      chromium.launchPersistentContext(profile, {
        executablePath: chromiumPath() ?? "",
        args: chromiumArguments,
      });
    try {
      let context = await start();
      const page = await tabIn(context);
      await page.evaluate("trial.open(true)");
      // Types on and on, and reports each number that was said to be kept.
      let sure = 0;
      await page.exposeFunction("keptUpTo", (number: number) => {
        sure = number;
      });
      const gone = page
        .evaluate(
          `(async () => {
            for (let typed = 1; ; typed += 1) {
              trial.set("note", String(typed));
              if ((await trial.retry()).state === "saved") keptUpTo(typed);
            }
          })()`,
        )
        .catch(() => {});
      await expect.poll(() => sure, { timeout: 20_000 }).toBeGreaterThan(30);
      const crashing = await context.browser()?.newBrowserCDPSession();
      crashing?.send("Browser.crash").catch(() => {});
      await gone;
      context = await start();
      const again = await tabIn(context);
      await again.evaluate("trial.open(false)");
      expect(Number(await again.evaluate("trial.read().note"))).toBeGreaterThanOrEqual(sure);
      await context.close();
    } finally {
      rmSync(profile, { recursive: true, force: true });
    }
  }, 60_000);
});
