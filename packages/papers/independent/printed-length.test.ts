import { expect, test } from "vitest";
import { packOf } from "../src/pack.ts";
import { pdfFile } from "../src/pdf/pdf-file.ts";
import type { Drawn } from "../src/scene/drawn.ts";
import { svgSheet } from "../src/svg/svg-sheet.ts";
import { sampleJob } from "../src/testing/sample-jobs.ts";
import { packFonts } from "./pack-fonts.ts";
import { darkStretchesMm, longestColumnMm, longestRowMm, rasterisedPage } from "./page-image.ts";
import { fileFor, runTool } from "./run-tool.ts";

// Rule F10: a printed length is true to 0.2 %. Measured in the picture that poppler and librsvg make of a page.
const lines: Drawn = {
  kind: "strokes",
  role: "fixed",
  strokes: [
    [
      { x: 30, y: 40 },
      { x: 130, y: 40 },
    ],
    [
      { x: 40, y: 60 },
      { x: 40, y: 160 },
    ],
  ],
};
const date = new Date("2026-03-02T00:00:00Z");

test("[F10] a line of 100 mm measures 100 ± 0.2 mm in the rasterised PDF, across and down", async () => {
  const sheet = { title: "lines", width: 210, height: 297, items: [lines] };
  const pdf = fileFor(
    "lines.pdf",
    await pdfFile([sheet], { title: "lines", subject: "lines", date }, packFonts),
  );
  const image = rasterisedPage(pdf, 1);
  // poppler gives a page that ends within a pixel that whole pixel.
  expect(Math.abs(image.width - 2100)).toBeLessThanOrEqual(1);
  expect(Math.abs(image.height - 2970)).toBeLessThanOrEqual(1);
  expect(longestRowMm(image)).toBeGreaterThan(99.8);
  expect(longestRowMm(image)).toBeLessThan(100.2);
  expect(longestColumnMm(image)).toBeGreaterThan(99.8);
  expect(longestColumnMm(image)).toBeLessThan(100.2);
});

test("[F10] the same line measures the same in the rasterised SVG", () => {
  const svg = fileFor("lines.svg", svgSheet({ title: "lines", width: 210, height: 297, items: [lines] }));
  // By way of librsvg's own PDF, whose size on paper follows from the millimetres of the SVG.
  const image = rasterisedPage(fileFor("lines.pdf", runTool("rsvg-convert", ["-f", "pdf", svg])), 1);
  expect(Math.abs(image.width - 2100)).toBeLessThan(3);
  expect(longestRowMm(image)).toBeGreaterThan(99.8);
  expect(longestRowMm(image)).toBeLessThan(100.2);
  expect(longestColumnMm(image)).toBeGreaterThan(99.8);
  expect(longestColumnMm(image)).toBeLessThan(100.2);
});

// Content ends 8 + 27 + 14 mm above the foot; the rulers' common line lies 5.5 mm below that.
test.each([
  ["a4", 297],
  ["letter", 279.4],
] as const)("[F10] the check rulers of a %s pack are true on a full-size template", async (paper, height) => {
  const { files } = await packOf(sampleJob(), { fonts: packFonts, date, paper });
  const pdf = fileFor("pack.pdf", files[0]?.bytes ?? new Uint8Array());
  const pages = runTool("pdftotext", ["-layout", pdf, "-"]).toString("utf8").split("\f");
  const page =
    pages.findIndex((text) => text.includes("Template, post pin") && text.includes("Full size")) + 1;
  expect(page).toBeGreaterThan(1);
  const image = rasterisedPage(pdf, page);
  const line = height - 8 - 27 - 14 + 5.5;
  // The rulers end at 4 in from the margin of 8 mm; words stand to their right.
  const onRulers = (row: number) => darkStretchesMm(image, row).filter((x) => x < 8 + 101.6 + 0.5);
  const millimetres = onRulers(line - 1.2);
  const inches = onRulers(line + 1.2);
  expect(millimetres).toHaveLength(11);
  expect(inches).toHaveLength(17);
  expect(Math.abs((millimetres[10] ?? 0) - (millimetres[0] ?? 0) - 100)).toBeLessThan(0.2);
  expect(Math.abs((inches[16] ?? 0) - (inches[0] ?? 0) - 101.6)).toBeLessThan(0.2);
});
