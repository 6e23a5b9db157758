// Journeys through the workbench in a real browser: `node --import tsx --test e2e/`, after the web app was built.
import assert from "node:assert/strict";
import { spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { after, before, describe, test } from "node:test";
import { dimension, dragHandle, openTable, serveWorkbench, verdict } from "./workbench.mjs";

const root = new URL("..", import.meta.url).pathname;
let table;
before(async () => {
  table = await openTable();
});
after(() => table.close());

describe("the drawing table", () => {
  test("[I13] a first visit opens the made-up farm, solved, and says what to drag", async () => {
    const { page, context, errors } = await table.firstVisit();
    assert.equal(await verdict(page), "Every pin may be 27.5 mm off and this still works.");
    assert.match(await page.locator(".bar").textContent(), /Drag the post pin/);
    assert.deepEqual(errors, []);
    await context.close();
  });

  test("[I1] a dragged pin takes its numbers with it, and one undo brings all back", async () => {
    const { page, context } = await table.firstVisit();
    const before = await verdict(page);
    await dragHandle(page, "postPin", -30, 0);
    const moved = await dimension(page, "postAlong");
    assert.ok(Number(moved) > 180, `post pin ${moved} behind the hinge`);
    assert.notEqual(await verdict(page), before);
    await page.getByRole("button", { name: "Undo" }).click();
    assert.equal(await dimension(page, "postAlong"), "167");
    assert.equal(await verdict(page), before);
    await page.keyboard.press("Control+Shift+Z");
    assert.equal(await dimension(page, "postAlong"), moved);
    await context.close();
  });

  test("[I1] a dimension is typed on the drawing, in either system; what is no length is refused", async () => {
    const { page, context } = await table.firstVisit();
    await page.locator('[data-dimension="postOut"]').click();
    await page.getByRole("textbox", { name: "Post pin out" }).fill("200 kg");
    await page.keyboard.press("Enter");
    assert.match(await page.locator(".typing-box .fault").textContent(), /Expected/);
    await page.getByRole("textbox", { name: "Post pin out" }).fill("7 1/2 in");
    await page.keyboard.press("Enter");
    assert.equal(await dimension(page, "postOut"), "190.5");
    await page.getByLabel("Units").selectOption("us");
    assert.match(await dimension(page, "postOut"), /^7 1\/2"$/);
    await context.close();
  });

  test("[I1] the leaf swings when dragged and when a chart's line moves", async () => {
    const { page, context } = await table.firstVisit();
    await dragHandle(page, "leaf", -60, 60);
    const swung = Number.parseFloat(await dimension(page, "theta"));
    assert.ok(swung > 36, `leaf at ${swung}°`);
    const chart = page.getByRole("slider", { name: /Lever arm/ });
    await chart.focus();
    await page.keyboard.press("End");
    assert.equal(await dimension(page, "theta"), "92°");
    await context.close();
  });

  test("[I2] a tap on a limit swings the leaf there and marks the place", async () => {
    const { page, context } = await table.firstVisit();
    await page
      .getByRole("button", { name: /^Clearance to pier/ })
      .first()
      .click();
    assert.equal(await dimension(page, "theta"), "58.9°");
    assert.equal(await page.locator(".limit-mark").count(), 1);
    await page.getByRole("button", { name: "Where this comes from: clearance to pier" }).click();
    assert.match(await page.locator(".origin").textContent(), /Tamsin Orrell/);
    await context.close();
  });

  test("[I4] another ram is swapped in with its best pins, and undone in one step", async () => {
    const { page, context } = await table.firstVisit();
    await page.getByRole("tab", { name: "Rams" }).click();
    const row = page.locator(".ranked li", { hasText: "Fieldhand 600" });
    await row.getByRole("button").click();
    await page.waitForFunction(() =>
      document.querySelector(".title-block")?.textContent.includes("Fieldhand 600"),
    );
    assert.match(await verdict(page), /35\.\d mm/);
    await page.getByRole("button", { name: "Undo" }).click();
    assert.equal(await verdict(page), "Every pin may be 27.5 mm off and this still works.");
    await context.close();
  });

  test("[G16] where nothing fits a remedy is applied with one tap and undone with another", async () => {
    const { page, context } = await table.firstVisit();
    await page.goto(`${table.served.url}#/jobs`);
    await page.setInputFiles("input[type=file]", `${root}examples/deep-pier.json`);
    await page.waitForSelector(".verdict");
    await page.getByRole("tab", { name: "Places" }).click();
    await page.waitForSelector(".remedies");
    await page.locator(".remedies button").first().click();
    await page.waitForSelector(".compared");
    await page.getByRole("button", { name: "Undo" }).click();
    await page.waitForSelector(".remedies");
    await context.close();
  });

  test("[I9] a reload loses nothing, nor does a browser that is killed", async () => {
    const { page, context } = await table.firstVisit();
    await page.locator('[data-handle="leafPin"]').focus();
    for (let press = 0; press < 3; press += 1) await page.keyboard.press("Shift+ArrowRight");
    await page.waitForTimeout(1100);
    const along = await dimension(page, "leafAlong");
    assert.notEqual(along, "1144");
    await page.reload();
    await page.waitForSelector(".verdict h2");
    assert.equal(await dimension(page, "leafAlong"), along);
    // A page that is closed in the middle of its work gets no last word.
    await page.locator('[data-handle="postPin"]').focus();
    await page.keyboard.press("ArrowDown");
    const out = await dimension(page, "postOut");
    await page.waitForTimeout(150);
    await page.close({ runBeforeUnload: false });
    const again = await context.newPage();
    await again.goto(table.served.url);
    await again.waitForSelector(".verdict h2");
    assert.equal(await dimension(again, "postOut"), out);
    await context.close();
  });

  test("[T1] two tabs on one job show each other's edits", async () => {
    const { page, context } = await table.firstVisit();
    const other = await context.newPage();
    await other.goto(page.url());
    await other.waitForSelector(".verdict h2");
    await page.locator('[data-handle="postPin"]').focus();
    await page.keyboard.press("Shift+ArrowDown");
    await other.waitForFunction(
      () => document.querySelector('[data-dimension="postOut"] .number')?.textContent === "202",
    );
    await context.close();
  });

  test("[I13] a new job asks, draws, and takes the best ram", async () => {
    const { page, context } = await table.firstVisit();
    await page.getByRole("link", { name: "Jobs" }).click();
    await page.getByRole("link", { name: "New job" }).click();
    await page.getByLabel("What is the gate called?").fill("Mill lane <b>gate</b>");
    await page.getByText("on the right").click();
    await page.getByRole("button", { name: "Draw it" }).click();
    await page.waitForSelector(".ranked button");
    await page.locator(".ranked button").first().click();
    await page.waitForSelector(".verdict h2");
    assert.equal(await page.locator("h1").textContent(), "Mill lane <b>gate</b>");
    assert.match(await page.locator(".title-block").textContent(), /hinge on the right/);
    await context.close();
  });

  test("[G18] tape readings give the pins as built, and a misread one is pointed at", async () => {
    const { page, context } = await table.firstVisit();
    await page.getByRole("tab", { name: "As built" }).click();
    const read = async (kind, value) => {
      await page.getByLabel("What was measured").selectOption(kind);
      await page.getByLabel("Reading (mm)").fill(value);
      await page.getByRole("button", { name: "Add reading" }).click();
    };
    await read("hingeToPostPin", "254");
    assert.match(await page.locator(".built-lines").textContent(), /more readings/);
    await read("postPinFromClosedLine", "192");
    await read("leafPinFromLeafFace", "120");
    await read("pinToPinClosed", "1311");
    await read("pinToPinOpen", "946");
    await read("leafPinFromHeel", "1109");
    assert.match(await page.locator(".built-lines").textContent(), /Post pin: along/);
    await read("hingeToLeafPin", "1135");
    assert.match(await page.locator(".readings .fails").textContent(), /likely misread/);
    await context.close();
  });

  test("[I15] the exported job gives the command line the numbers that the page shows", async () => {
    const { page, context } = await table.firstVisit({ acceptDownloads: true });
    await dragHandle(page, "postPin", 12, 9);
    const shown = await verdict(page);
    await page.getByText("More", { exact: true }).click();
    const [download] = await Promise.all([
      page.waitForEvent("download"),
      page.getByRole("button", { name: "Export job file" }).click(),
    ]);
    const { readJob, checkJob } = await import("../packages/job/src/index.ts");
    const read = readJob(readFileSync(await download.path(), "utf8"));
    assert.ok(read.ok);
    const reserve = checkJob(read.job).findings.find((one) => one.id === "reserve");
    assert.equal(
      `Reserve: ${shown.charAt(0).toLowerCase()}${shown.slice(1, -1)}`,
      reserve.text.split(";")[0],
    );
    await context.close();
  });
});

describe("without a network", () => {
  test("[I12] after the first load the page opens, edits and keeps with the server gone", async () => {
    const served = await serveWorkbench();
    const context = await table.browser.newContext({ viewport: { width: 1440, height: 900 } });
    const page = await context.newPage();
    await page.goto(served.url);
    await page.waitForSelector(".verdict h2");
    await page.evaluate(() => navigator.serviceWorker.ready);
    await page.waitForFunction(async () => (await caches.keys()).length > 0);
    await page.waitForTimeout(500);
    await served.stop();
    await context.setOffline(true);
    await page.reload();
    await page.waitForSelector(".verdict h2");
    await page.locator('[data-handle="postPin"]').focus();
    await page.keyboard.press("ArrowDown");
    assert.equal(await dimension(page, "postOut"), "193");
    await page.getByRole("tab", { name: "Rams" }).click();
    await page.waitForSelector(".ranked");
    await page.reload();
    await page.waitForSelector(".verdict h2");
    assert.equal(await dimension(page, "postOut"), "193");
    await context.close();
  });
});

describe("papers", () => {
  test("[F10] the page makes the same papers as the command line, and a printed length of them is true", async () => {
    const { page, context, errors } = await table.firstVisit({ acceptDownloads: true });
    await page.getByRole("tab", { name: "Papers" }).click();
    await page.getByRole("button", { name: "Make the papers" }).click();
    await page.waitForSelector(".papers ul button", { timeout: 60_000 });
    const names = await page.locator(".papers ul button").allTextContents();
    assert.equal(names.filter((name) => name.includes(".dxf")).length, 2);
    const [download] = await Promise.all([
      page.waitForEvent("download"),
      page.locator(".papers ul button").first().click(),
    ]);
    const fromPage = await download.path();
    const folder = mkdtempSync(join(tmpdir(), "pintle-journey-"));
    const words = ["pack", "examples/harrow-farm.json", "--out", folder];
    spawnSync(process.execPath, ["scripts/run.mjs", "pintle", ...words], { cwd: root });
    const fromShell = join(folder, "harrow-farm-yard-gate-papers.pdf");
    const [pages, pagesOfShell] = [fromPage, fromShell].map((file) => greyPages(file, 60));
    assert.equal(pages.length, 14);
    for (const [index, picture] of pages.entries()) {
      assert.ok(picture.equals(pagesOfShell[index]), `sheet ${index + 1} differs from the command line's`);
    }
    // The rulers' common line lies 43.5 mm above the foot of every sheet to scale, its 11 marks each 10 mm above it.
    const marks = darkPlaces(fromPage, 5, 297 - 43.5 - 1.2).filter((x) => x < 110);
    assert.equal(marks.length, 11);
    assert.ok(Math.abs(marks[10] - marks[0] - 100) < 0.2, `100 mm measure ${marks[10] - marks[0]} mm`);
    rmSync(folder, { recursive: true });
    assert.deepEqual(errors, []);
    await context.close();
  });
});

/** Every page of a PDF as a grey picture (PGM), by poppler. */
function greyPages(file, dpi, first = 1, last = 99) {
  const words = ["-gray", "-r", String(dpi), "-f", String(first), "-l", String(last), file];
  const run = spawnSync("pdftoppm", words, { maxBuffer: 1e9 });
  if (run.status !== 0) throw new Error(`pdftoppm (Debian: poppler-utils): ${run.error ?? run.stderr}`);
  const pages = [];
  for (let from = 0; from < run.stdout.length; ) {
    const [, width, height] =
      /^P5\n(\d+) (\d+)\n255\n/.exec(run.stdout.toString("latin1", from, from + 32)) ?? [];
    const header = `P5\n${width} ${height}\n255\n`.length;
    const end = from + header + Number(width) * Number(height);
    pages.push(run.stdout.subarray(from, end));
    from = end;
  }
  return pages;
}

/** Middles [mm from the left] of the dark stretches in a page's row `down` mm from the top, at 10 pixels a mm. */
function darkPlaces(file, number, down) {
  const [picture] = greyPages(file, 254, number, number);
  const width = Number(/^P5\n(\d+)/.exec(picture.toString("latin1", 0, 32))?.[1]);
  const start = picture.indexOf("255\n") + 4 + Math.round(down * 10) * width;
  const places = [];
  let from = -1;
  for (const [x, grey] of picture.subarray(start, start + width).entries()) {
    if (grey < 160 && from < 0) from = x;
    if (grey >= 160 && from >= 0) {
      places.push((from + x) / 20);
      from = -1;
    }
  }
  return places;
}
