// The automated accessibility check, and the whole job by keyboard, in each theme.
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { after, before, describe, test } from "node:test";
import { dimension, openTable, verdict } from "./workbench.mjs";

const axe = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");
let table;
before(async () => {
  table = await openTable();
});
after(() => table.close());

/** Faults of a page as axe-core sees them (WCAG 2.2 A and AA), one line each. */
async function faultsOf(page) {
  await page.evaluate(axe);
  const { violations } = await page.evaluate(() =>
    window.axe.run(document, {
      runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"],
    }),
  );
  return violations.flatMap((fault) =>
    fault.nodes.map((node) => `${fault.id}: ${node.target.join(" ")} ${node.failureSummary ?? ""}`),
  );
}

describe("[I11] accessible", () => {
  for (const theme of ["paper", "slate", "sun"]) {
    for (const width of [1440, 390]) {
      test(`nothing is found in the ${theme} theme, ${width} wide`, async () => {
        const context = await table.browser.newContext({ bypassCSP: true, viewport: { width, height: 844 } });
        const page = await context.newPage();
        await page.addInitScript((chosen) => localStorage.setItem("pintle-theme", chosen), theme);
        await page.goto(table.served.url);
        await page.waitForSelector(".verdict h2");
        const found = await faultsOf(page);
        for (const tab of ["Places", "Rams", "As built", "Papers", "Values"]) {
          await page.getByRole("tab", { name: tab }).click();
          if (tab === "Places") {
            await page.getByRole("button", { name: "Show where" }).click();
            await page.waitForSelector(".compared");
            await page.waitForSelector(".map-band");
          }
          if (tab === "Rams") await page.waitForSelector(".ranked");
          found.push(...(await faultsOf(page)).map((fault) => `${tab}: ${fault}`));
        }
        for (const [address, ready] of [
          ["#/jobs", ".job-list li"],
          ["#/new", ".questions"],
        ]) {
          await page.goto(table.served.url + address);
          await page.waitForSelector(ready);
          found.push(...(await faultsOf(page)).map((fault) => `${address}: ${fault}`));
        }
        assert.deepEqual([...new Set(found)], []);
        await context.close();
      });
    }
  }

  test("a pin is found, moved, typed and undone by keyboard alone", async () => {
    const { page, context } = await table.firstVisit();
    const focused = () =>
      page.evaluate(() => document.activeElement?.closest("[data-handle]")?.getAttribute("data-handle"));
    for (let press = 0; press < 60 && (await focused()) !== "postPin"; press += 1)
      await page.keyboard.press("Tab");
    assert.equal(await focused(), "postPin");
    await page.keyboard.press("ArrowLeft");
    await page.keyboard.press("Shift+ArrowLeft");
    assert.equal(await dimension(page, "postAlong"), "178");
    const moved = await verdict(page);
    await page.keyboard.press("Control+z");
    assert.notEqual(await verdict(page), moved);
    for (let press = 0; press < 60; press += 1) {
      await page.keyboard.press("Shift+Tab");
      const at = await page.evaluate(() => document.activeElement?.getAttribute("data-dimension"));
      if (at === "postOut") break;
    }
    await page.keyboard.press("Enter");
    await page.keyboard.type("195");
    await page.keyboard.press("Enter");
    assert.equal(await dimension(page, "postOut"), "195");
    await context.close();
  });
});

describe("[I1] a phone held upright", () => {
  for (const theme of ["paper", "sun"]) {
    test(`nothing is wider than the screen in the ${theme} theme, and targets are large enough`, async () => {
      const context = await table.browser.newContext({
        viewport: { width: 390, height: 844 },
        hasTouch: true,
      });
      const page = await context.newPage();
      await page.addInitScript((chosen) => localStorage.setItem("pintle-theme", chosen), theme);
      await page.goto(table.served.url);
      await page.waitForSelector(".verdict h2");
      const { wide, small } = await page.evaluate(() => ({
        wide: document.documentElement.scrollWidth,
        small: [...document.querySelectorAll("button, select, a, .handle .target, .press .target")]
          .filter((each) => each.checkVisibility())
          .map((each) => ({ name: each.outerHTML.slice(0, 80), height: each.getBoundingClientRect().height }))
          .filter(({ height }) => height > 0 && height < 43.5),
      }));
      assert.equal(wide, 390);
      assert.deepEqual(small, []);
      await context.close();
    });
  }
});
