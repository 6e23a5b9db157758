import { runTool } from "./run-tool.ts";

/** Pixels of one millimetre in the pictures that tests measure. */
const pixelsPerMm = 10;

/** A page as shades of grey, row by row; 0 is black. */
export interface PageImage {
  readonly width: number;
  readonly height: number;
  readonly shades: Uint8Array;
}

/** Rasterises one page of a PDF with poppler at 254 dots per inch: ten a millimetre. */
export function rasterisedPage(pdf: string, page: number): PageImage {
  const dots = String(pixelsPerMm * 25.4);
  return greyMap(runTool("pdftoppm", ["-gray", "-r", dots, "-f", String(page), "-l", String(page), pdf]));
}

/** Reads the portable grey map that poppler writes: `P5 width height 255` and the shades. */
function greyMap(bytes: Buffer): PageImage {
  const head = /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(bytes.subarray(0, 64).toString("latin1"));
  if (head === null) throw new Error("no grey map came from pdftoppm");
  const [whole, width, height] = head;
  return {
    width: Number(width),
    height: Number(height),
    shades: new Uint8Array(bytes.subarray(whole.length)),
  };
}

/** Length of the longest unbroken dark run in any row, in millimetres. */
export function longestRowMm(image: PageImage): number {
  let longest = 0;
  for (let y = 0; y < image.height; y++) {
    longest = Math.max(longest, longestRun(image, y * image.width, 1, image.width));
  }
  return longest / pixelsPerMm;
}

/** Length of the longest unbroken dark run in any column, in millimetres. */
export function longestColumnMm(image: PageImage): number {
  let longest = 0;
  for (let x = 0; x < image.width; x++) {
    longest = Math.max(longest, longestRun(image, x, image.width, image.height));
  }
  return longest / pixelsPerMm;
}

/** Centres of the dark stretches of a row, in millimetres from the left edge. */
export function darkStretchesMm(image: PageImage, yMm: number): number[] {
  const row = Math.round(yMm * pixelsPerMm) * image.width;
  const centres: number[] = [];
  let start = -1;
  for (let x = 0; x <= image.width; x++) {
    const isDark = x < image.width && (image.shades[row + x] ?? 255) < 128;
    if (isDark && start < 0) start = x;
    if (!isDark && start >= 0) {
      centres.push((start + x) / 2 / pixelsPerMm);
      start = -1;
    }
  }
  return centres;
}

function longestRun({ shades }: PageImage, start: number, step: number, count: number): number {
  let longest = 0;
  let run = 0;
  for (let i = 0; i < count; i++) {
    run = (shades[start + i * step] ?? 255) < 128 ? run + 1 : 0;
    if (run > longest) longest = run;
  }
  return longest;
}
