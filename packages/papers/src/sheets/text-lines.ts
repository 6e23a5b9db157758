import { withoutControls } from "../scene/one-line.ts";
import type { MeasureText } from "./sheet.ts";

const ellipsis = "…";

/** More characters than any line on paper holds: what is beyond need not be measured. */
const mostOnLine = 600;

/**
 * A text broken into lines no wider than `width` [mm]; a word that is wider than a line is broken inside.
 * With `most`, later lines are dropped and the last one kept ends in an ellipsis.
 *
 * ### Example
 *   const measure = (text: string) => text.length;
 *   expect(wrapText("hang the ram", 3, 8, measure)).toEqual(["hang the", "ram"]);
 *   expect(wrapText("hang the ram", 3, 8, measure, { most: 1 })).toEqual(["hang th…"]);
 */
export function wrapText(
  text: string,
  size: number,
  width: number,
  measure: MeasureText,
  { bold = false, most = Number.POSITIVE_INFINITY }: { readonly bold?: boolean; readonly most?: number } = {},
): string[] {
  const fits = (line: string) => line.length <= mostOnLine && measure(line, size, bold) <= width;
  const lines: string[] = [];
  let line = "";
  for (const word of withoutControls(text).split(/\s+/)) {
    const longer = line === "" ? word : `${line} ${word}`;
    if (fits(longer)) {
      line = longer;
      continue;
    }
    if (line !== "") lines.push(line);
    line = word;
    while (lines.length <= most && !fits(line)) {
      const head = longestStart(line, fits);
      lines.push(head);
      line = line.slice(head.length);
    }
    if (lines.length > most) break;
  }
  if (line !== "") lines.push(line);
  if (lines.length <= most) return lines;
  return [...lines.slice(0, most - 1), shortened(`${lines[most - 1] ?? ""}${ellipsis}`, fits)];
}

/**
 * A text on one line no wider than `width` [mm], cut with an ellipsis where it must be.
 *
 * ### Example
 *   expect(fitText("Quarry lane, east gate", 3, 12, (text) => text.length)).toBe("Quarry lane…");
 */
export function fitText(
  text: string,
  size: number,
  width: number,
  measure: MeasureText,
  bold = false,
): string {
  const clean = withoutControls(text);
  const fits = (line: string) => line.length <= mostOnLine && measure(line, size, bold) <= width;
  return fits(clean) ? clean : shortened(`${clean}${ellipsis}`, fits);
}

/** At least one character, whatever its width: a line that holds nothing would never end. */
function longestStart(text: string, fits: (line: string) => boolean): string {
  const characters = [...text.slice(0, mostOnLine)];
  let low = 1;
  let high = characters.length;
  while (low < high) {
    const middle = Math.ceil((low + high) / 2);
    if (fits(characters.slice(0, middle).join(""))) low = middle;
    else high = middle - 1;
  }
  return characters.slice(0, low).join("");
}

/** `text` ends in an ellipsis; characters before it go until the line fits. */
function shortened(text: string, fits: (line: string) => boolean): string {
  if (fits(text)) return text;
  const head = longestStart(text.slice(0, -1), (start) => fits(`${start.trimEnd()}${ellipsis}`));
  return `${head.trimEnd()}${ellipsis}`;
}
