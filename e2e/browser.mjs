// Debian's Chromium through playwright-core; nothing is downloaded.
import { existsSync } from "node:fs";
import { chromium } from "playwright-core";

const places = [
  process.env.CHROMIUM,
  "/usr/bin/chromium",
  "/usr/bin/chromium-browser",
  "/usr/bin/google-chrome",
];

/** Where a Chromium is; null when there is none. */
export const chromiumPath = () => places.find((place) => place !== undefined && existsSync(place)) ?? null;

export const chromiumArguments = [
  "--no-sandbox",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
  "--no-first-run",
];

export function launch() {
  const executablePath = chromiumPath();
  if (executablePath === null) throw new Error("no Chromium found; install it or set CHROMIUM to its path");
  return chromium.launch({
    executablePath,
    args: chromiumArguments,
  });
}
