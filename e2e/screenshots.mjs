// Pictures of the main screens: `node e2e/shot.mjs [address] [folder]`. Needs a served workbench.
import { mkdirSync } from "node:fs";
import { join } from "node:path";
import { launch } from "./browser.mjs";

const [url = "http://127.0.0.1:4810/", folder = "e2e/screenshots"] = process.argv.slice(2);
mkdirSync(folder, { recursive: true });
const browser = await launch();
for (const [width, height] of [
  [1440, 900],
  [390, 844],
]) {
  for (const theme of ["paper", "slate", "sun"]) {
    const isPhone = width < 500;
    const context = await browser.newContext({ viewport: { width, height }, hasTouch: isPhone });
    const page = await context.newPage();
    page.on("pageerror", (error) => process.stderr.write(`${error.message}\n`));
    await page.addInitScript((chosen) => localStorage.setItem("pintle-theme", chosen), theme);
    const shoot = (name) =>
      page.screenshot({ path: join(folder, `${name}-${theme}-${width}.png`), fullPage: isPhone });
    await page.goto(url);
    await page.waitForSelector(".verdict h2");
    await page.waitForTimeout(250);
    await shoot("table");
    await page.getByRole("tab", { name: "Places" }).click();
    await page.getByRole("button", { name: "Show where" }).click();
    await page.waitForSelector(".compared");
    await page.waitForSelector(".map-band");
    await shoot("map");
    if (theme === "paper") {
      await page.getByRole("button", { name: "Hide the map" }).click();
      for (const tab of ["Rams", "As built", "Values"]) {
        await page.getByRole("tab", { name: tab }).click();
        await page.waitForSelector(
          { Rams: ".ranked", "As built": ".as-built", Values: ".values li" }[tab] ?? "main",
        );
        await shoot(tab.toLowerCase().replace(" ", "-"));
      }
      await page.goto(`${url}#/jobs`);
      await page.waitForSelector(".job-list li");
      await shoot("jobs");
      await page.goto(`${url}#/new`);
      await page.waitForSelector(".questions");
      await shoot("new");
    }
    await context.close();
  }
}
await browser.close();
