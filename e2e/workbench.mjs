// The built workbench served on a free port of this machine, and a browser page on it.
import { createStaticServer } from "../apps/cli/src/serve/static-server.ts";
import { launch } from "./browser.mjs";

const folder = new URL("../dist/web", import.meta.url).pathname;

/** @param {number} [port] a port to come back to; any that is free without it */
export async function serveWorkbench(port = 0) {
  const server = await createStaticServer(folder);
  await new Promise((ready) => server.listen(port, "127.0.0.1", () => ready(undefined)));
  const address = server.address();
  if (address === null || typeof address === "string") throw new Error("the server has no port");
  return {
    port: address.port,
    url: `http://127.0.0.1:${address.port}/`,
    async stop() {
      server.closeAllConnections();
      await new Promise((closed) => server.close(closed));
    },
  };
}

/** A browser with one served workbench for a file of journeys. */
export async function openTable() {
  const served = await serveWorkbench();
  const browser = await launch();
  /** A first visit: nothing kept, the demo open and judged. Errors of the page fail the journey that met them. */
  const firstVisit = async (options = {}) => {
    const context = await browser.newContext({
      viewport: { width: 1440, height: 900 },
      locale: "en-GB",
      ...options,
    });
    const page = await context.newPage();
    const errors = /** @type {string[]} */ ([]);
    page.on("pageerror", (error) => errors.push(error.message));
    page.on("console", (message) => {
      if (message.type() === "error") errors.push(message.text());
    });
    await page.goto(served.url);
    await page.waitForSelector(".verdict h2");
    return { context, page, errors };
  };
  return { served, browser, firstVisit, close: () => Promise.all([browser.close(), served.stop()]) };
}

export const verdict = (page) => page.locator(".verdict h2").textContent();

/** The number of a dimension on the drawing. */
export const dimension = (page, id) => page.locator(`[data-dimension="${id}"] .number`).textContent();

/** Drags a handle of the drawing by some pixels. */
export async function dragHandle(page, id, dx, dy) {
  const box = await page.locator(`[data-handle="${id}"]`).boundingBox();
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.mouse.move(x + dx / 2, y + dy / 2, { steps: 4 });
  await page.mouse.move(x + dx, y + dy, { steps: 4 });
  await page.mouse.up();
}
