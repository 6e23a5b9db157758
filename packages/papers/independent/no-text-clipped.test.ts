import { describe, expect, test } from "vitest";
import { packOf } from "../src/pack.ts";
import { sampleJob } from "../src/testing/sample-jobs.ts";
import { packFonts } from "./pack-fonts.ts";
import { type PageWord, pageWords } from "./page-words.ts";
import { fileFor, runTool } from "./run-tool.ts";

const date = new Date("2026-03-02T00:00:00Z");
/** Printers reach to about a quarter of an inch from the edge [mm]. */
const unprinted = 6.35;

const long = "Nordöstliche Ziegeleihofeinfahrt Überlänge ".repeat(3).slice(0, 119);
const endless = "W".repeat(120);

/** Every text as long as the job file allows, or as wide as letters go. */
function wordyJob(text: string, display: "metric" | "us") {
  return sampleJob((job) => {
    job.title = `${text} `.repeat(150);
    job.note = `${text} `.repeat(150);
    job.display = display;
    job.leaves[0].id = text;
    job.leaves[0].fixed[0].name = text;
    job.rams[0].name = text;
  });
}

describe.each(["a4", "letter"] as const)("[F10] on %s", (paper) => {
  test.each([
    ["long words in metric", wordyJob(long, "metric")],
    ["long words in feet and inches", wordyJob(long, "us")],
    ["one endless word", wordyJob(endless, "metric")],
    ["ordinary words in metric", sampleJob()],
    ["ordinary words in feet and inches", sampleJob((job) => (job.display = "us"))],
  ])("no text leaves the part of the paper that printers reach: %s", async (_name, job) => {
    const { files } = await packOf(job, { fonts: packFonts, date, paper });
    const pages = pageWords(fileFor("pack.pdf", files[0]?.bytes ?? new Uint8Array()));
    expect(pages.length).toBeGreaterThan(5);
    for (const [index, { width, height, words }] of pages.entries()) {
      const outside = words.filter(
        ({ left, top, right, bottom }) =>
          left < unprinted || top < unprinted || right > width - unprinted || bottom > height - unprinted,
      );
      expect({ page: index + 1, outside }).toEqual({ page: index + 1, outside: [] });
    }
  });

  test.each(["metric", "us"] as const)("no word lies on another: %s", async (display) => {
    const job = sampleJob((draft) => {
      draft.display = display;
    });
    const { files } = await packOf(job, { fonts: packFonts, date, paper });
    const pages = pageWords(fileFor("pack.pdf", files[0]?.bytes ?? new Uint8Array()));
    for (const [index, { words }] of pages.entries()) {
      expect({ page: index + 1, clashes: clashes(words) }).toEqual({ page: index + 1, clashes: [] });
    }
  });
});

test.each([
  ["long words", wordyJob(long, "us")],
  ["ordinary words", sampleJob()],
])("[F10] no text leaves the SVG, though it is shown in another font: %s", async (_name, job) => {
  const { files } = await packOf(job, { fonts: packFonts, date });
  const svg = fileFor("plan.svg", files.find(({ name }) => name.endsWith(".svg"))?.bytes ?? new Uint8Array());
  const [page] = pageWords(fileFor("plan.pdf", runTool("rsvg-convert", ["-f", "pdf", svg])));
  expect(page?.words.length).toBeGreaterThan(20);
  const outside = page?.words.filter(({ left, right }) => left < unprinted || right > page.width - unprinted);
  expect(outside).toEqual([]);
});

/** Pairs of words that share more than a tenth of the smaller one. */
function clashes(lines: readonly PageWord[]): string[] {
  const words = lines.map(letters);
  const found: string[] = [];
  words.forEach((a, i) => {
    for (const b of words.slice(i + 1)) {
      const wide = Math.min(a.right, b.right) - Math.max(a.left, b.left);
      const high = Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top);
      if (wide > 0 && high > 0 && wide * high > 0.1 * Math.min(area(a), area(b)))
        found.push(`${a.text} | ${b.text}`);
    }
  });
  return found;
}

/** poppler's boxes are a line high, letters from base line to the top of a capital are not; upright words only. */
function letters(word: PageWord): PageWord {
  const height = word.bottom - word.top;
  const isUpright = word.right - word.left < height && word.text.length > 2;
  return isUpright ? word : { ...word, top: word.top + 0.25 * height, bottom: word.bottom - 0.25 * height };
}

const area = ({ left, top, right, bottom }: PageWord): number => (right - left) * (bottom - top);
