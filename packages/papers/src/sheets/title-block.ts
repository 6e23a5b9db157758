import type { Drawn } from "../scene/drawn.ts";
import type { Box } from "../scene/scene.ts";
import { textAt } from "./lay-text.ts";
import type { MeasureText } from "./sheet.ts";
import { fitText, wrapText } from "./text-lines.ts";

export const titleBlockHeight = 27;

/** What the title block of a sheet says. */
export interface TitleBlock {
  readonly job: string;
  readonly sheet: string;
  /** Which leaf, and for which side it is drawn. */
  readonly drawnFor: string;
  readonly scale: string;
  readonly units: string;
  readonly revision: string;
  readonly date: string;
  readonly assumed: string;
  readonly number: string;
  /** The job's own note, such as that the scenario is invented. */
  readonly note: string;
}

interface Cell {
  readonly label: string;
  readonly value: string;
  readonly from: number;
  readonly to: number;
  readonly row: 0 | 1;
  readonly bold?: boolean;
}

const rowHeight = 10;
const labelSize = 2.1;
const valueSize = 3.2;
const inset = 1.6;

/** The title block across the foot of a sheet: two rows of cells and the job's note. */
export function titleBlock(box: Box, block: TitleBlock, measure: MeasureText): Drawn[] {
  const width = box.right - box.left;
  const cells: Cell[] = [
    { label: "job", value: block.job, from: 0, to: 0.46, row: 0, bold: true },
    { label: "sheet", value: block.sheet, from: 0.46, to: 0.82, row: 0, bold: true },
    { label: "number", value: block.number, from: 0.82, to: 1, row: 0 },
    { label: "drawn for", value: block.drawnFor, from: 0, to: 0.46, row: 1 },
    { label: "scale", value: block.scale, from: 0.46, to: 0.56, row: 1 },
    { label: "dimensions in", value: block.units, from: 0.56, to: 0.68, row: 1 },
    { label: "revision", value: block.revision, from: 0.68, to: 0.82, row: 1 },
    { label: "date", value: block.date, from: 0.82, to: 1, row: 1 },
  ];
  const rows = [box.top, box.top + rowHeight, box.top + 2 * rowHeight];
  const at = (share: number) => box.left + share * width;
  const lines: Drawn = {
    kind: "strokes",
    role: "frame",
    strokes: [
      ...rows.slice(1).map(
        (y) =>
          [
            { x: box.left, y },
            { x: box.right, y },
          ] as const,
      ),
      ...cells
        .filter((cell) => cell.from > 0)
        .map((cell) => {
          const y = rows[cell.row] ?? box.top;
          return [
            { x: at(cell.from), y },
            { x: at(cell.from), y: y + rowHeight },
          ] as const;
        }),
    ],
  };
  const frame: Drawn = {
    kind: "path",
    role: "fixed",
    spots: [
      { x: box.left, y: box.top },
      { x: box.right, y: box.top },
      { x: box.right, y: box.bottom },
      { x: box.left, y: box.bottom },
    ],
    closed: true,
    fill: "paper",
    stroked: true,
  };
  const foot = wrapText(
    `${block.assumed}${block.note === "" ? "" : `  ·  ${block.note}`}`,
    2.3,
    width - 2 * inset,
    measure,
    {
      most: 2,
    },
  );
  return [
    frame,
    lines,
    ...cells.flatMap((cell) =>
      cellTexts(cell, at(cell.from), at(cell.to), rows[cell.row] ?? box.top, measure),
    ),
    ...foot.map((line, index) =>
      textAt({ x: box.left + inset, y: box.top + 2 * rowHeight + 2.9 + index * 2.9 }, line, {
        size: 2.3,
        role: "note",
      }),
    ),
  ];
}

function cellTexts(cell: Cell, left: number, right: number, top: number, measure: MeasureText): Drawn[] {
  const room = right - left - 2 * inset;
  const bold = cell.bold ?? false;
  // A long text is set smaller first and cut only when that is not enough.
  const size =
    [valueSize + (bold ? 0.4 : 0), 2.8, 2.4].find((one) => measure(cell.value, one, bold) <= room) ?? 2.4;
  return [
    textAt({ x: left + inset, y: top + 3 }, cell.label, { size: labelSize, role: "note" }),
    textAt({ x: left + inset, y: top + 7.9 }, fitText(cell.value, size, room, measure, bold), { size, bold }),
  ];
}
