import type { DimensionId } from "@pintle/core";
import { assumedValues, type JobLeaf, type SetOutLeafDocument, setUpText } from "@pintle/job";
import type { Drawn } from "../scene/drawn.ts";
import { planScene } from "../scene/plan-scene.ts";
import type { StandsOn } from "../scene/plan-view.ts";
import type { Box, Scene } from "../scene/scene.ts";
import { contentBox, type Draft, type Pack, seenFromText } from "./draft.ts";
import { type FittedScene, fitScene } from "./fit-scale.ts";
import { lineStep, linesHeight, textAt, textLines } from "./lay-text.ts";
import { wrapText } from "./text-lines.ts";
import { valueInWords } from "./value-name.ts";

/** How far past the leaf pin the leaf is drawn, and how far a ghost of it from the hinge [mm]. */
const pastPin = 180;
const ghostReach = 280;
/** Widths of the table of dimensions, beside the drawing and below it [mm]. */
const besideWidth = 78;
const gap = 4;

const nameSize = 2.9;
const amountSize = 4.2;
const noteSize = 2.6;
/** Below a row [mm]; the smaller where the paper is short. */
const rowGaps = [1.4, 0.2] as const;

type Row = SetOutLeafDocument["dimensions"][number] & { readonly letter: string };

/** The sheet to work from: where the pins go, measured from things that exist, and how the ram is hung. */
export function settingOutSheet(
  pack: Pack,
  leafIndex: number,
  setOut: SetOutLeafDocument,
  standsOn: StandsOn,
  failure: string | null,
): Draft {
  const leaf = pack.job.leaves[leafIndex] as JobLeaf;
  const rows: Row[] = setOut.dimensions.map((dimension, index) => ({
    ...dimension,
    letter: String.fromCharCode(65 + index),
  }));
  const box = contentBox(pack.paper, "upright", true);
  const head = heading(pack, setOut, standsOn, box, failure);
  const below = { ...box, top: box.top + head.height };
  const scene = settingOutScene(pack, leafIndex, setOut, standsOn, rows);
  const { plan, table } = arranged(pack, scene, below, rows);
  const drawnTable = tableOfDimensions(pack, rows, table);
  const assumed = assumedNote(pack, leafIndex, { ...table, top: table.top + drawnTable.height });
  return {
    title: "Setting out",
    leaf,
    lies: "upright",
    denominator: plan.denominator,
    items: [...head.items, ...plan.items, ...drawnTable.items, ...assumed],
  };
}

function settingOutScene(
  pack: Pack,
  leafIndex: number,
  setOut: SetOutLeafDocument,
  standsOn: StandsOn,
  rows: readonly Row[],
): Scene {
  const leaf = pack.job.leaves[leafIndex] as JobLeaf;
  const placement = leaf.placement ?? null;
  const letters: Partial<Record<DimensionId, string>> = {};
  for (const row of rows) letters[row.id] = row.letter;
  return planScene(pack.job, leafIndex, placement, {
    standsOn,
    leafAngleDeg: setOut.setUpAngleDeg,
    // A leaf that opens away would lie across the dimensions behind it.
    ghostAnglesDeg: setOut.leafIs === "open" ? [0] : [],
    cutAtMm: (placement?.leafPin.alongMm ?? 0) + pastPin,
    ghostCutAtMm: ghostReach,
    sweep: false,
    labels: true,
    dimensions: {
      ids: rows.map((row) => row.id).filter((id) => id !== "hingeToPostPin"),
      letters,
    },
  });
}

function heading(
  pack: Pack,
  setOut: SetOutLeafDocument,
  standsOn: StandsOn,
  box: Box,
  failure: string | null,
): { items: Drawn[]; height: number } {
  const width = box.right - box.left;
  const way = setOut.leafIs === "open" ? "to the ram's side" : "away from the ram's side";
  const hint = `${seenFromText(standsOn)} The leaf opens ${way}. Letters on the drawing are those of the table. Measure at the height of the pins, level, tape taut. Do the checks before drilling.`;
  const paragraphs = [
    ...(failure === null ? [] : [{ text: failure, size: 3.6, bold: true, role: "limit" as const }]),
    { text: setUpText(setOut.leafIs), size: 3.6, bold: true, role: "text" as const },
    { text: hint, size: nameSize, bold: false, role: "note" as const },
  ];
  const items: Drawn[] = [];
  let y = box.top;
  for (const { text, ...look } of paragraphs) {
    const lines = wrapText(text, look.size, width, pack.measure, { bold: look.bold });
    items.push(...textLines(box.left, y, lines, look));
    y += linesHeight(lines.length, look.size);
  }
  return { items, height: y - box.top + 2 };
}

/** Drawing and table side by side or one above the other, whichever lets the drawing be larger. */
function arranged(
  pack: Pack,
  scene: Scene,
  box: Box,
  rows: readonly Row[],
): { plan: FittedScene; table: Box } {
  const side = { ...box, right: box.right - besideWidth - gap };
  const beside = fitScene(scene, side, pack.display);
  const wholeTable = tableOfDimensions(pack, rows, box).height + 14;
  const top = { ...box, bottom: box.bottom - wholeTable };
  if (top.bottom - top.top > 60) {
    const above = fitScene(scene, top, pack.display);
    if (above.denominator < beside.denominator)
      return { plan: above, table: { ...box, top: top.bottom + gap } };
  }
  return { plan: beside, table: { ...box, left: box.right - besideWidth } };
}

const groups: Record<DimensionId, string> = {
  postPinBehindHinge: "Post pin",
  postPinOut: "Post pin",
  postPinFromRamFace: "Post pin",
  postPinFromGatewayFace: "Post pin",
  hingeToPostPin: "Post pin",
  leafPinFromHinge: "Leaf pin",
  leafPinFromHeel: "Leaf pin",
  leafPinFromLeafFace: "Leaf pin",
  hingeToLeafPin: "Leaf pin",
  pinRise: "Hanging the ram",
  runOutAtSetUp: "Hanging the ram",
  pinToPinAtSetUp: "Hanging the ram",
  pinToPinClosed: "Once it hangs",
  pinToPinOpen: "Once it hangs",
};

type Block = { readonly heading: string } | { readonly row: Row };

/** Letter, amount, what it is, and a line to write down what was measured. Two columns where there is room. */
function tableOfDimensions(pack: Pack, rows: readonly Row[], box: Box): { items: Drawn[]; height: number } {
  const room = box.bottom - box.top - linesHeight(4, noteSize);
  const wide = tableWithGaps(pack, rows, box, rowGaps[0]);
  return wide.height <= room ? wide : tableWithGaps(pack, rows, box, rowGaps[1]);
}

function tableWithGaps(
  pack: Pack,
  rows: readonly Row[],
  box: Box,
  rowGap: number,
): { items: Drawn[]; height: number } {
  const columns = box.right - box.left > 150 ? 2 : 1;
  const width = (box.right - box.left - (columns - 1) * 8) / columns;
  const blocks = rows.flatMap((row, index): Block[] => {
    const before = rows[index - 1];
    const starts = before === undefined || groups[before.id] !== groups[row.id];
    return starts ? [{ heading: groups[row.id] }, { row }] : [{ row }];
  });
  const draw = (block: Block, left: number, top: number) =>
    "row" in block
      ? tableRow(pack, block.row, left, top, width, rowGap)
      : tableHeading(block.heading, left, top, width);
  const whole = blocks.reduce((sum, block) => sum + draw(block, 0, 0).height, 0);
  const items: Drawn[] = [];
  let column = 0;
  let y = box.top;
  let height = 0;
  for (const block of blocks) {
    if (column + 1 < columns && y - box.top > whole / columns - 4) {
      column += 1;
      y = box.top;
    }
    const drawn = draw(block, box.left + column * (width + 8), y);
    items.push(...drawn.items);
    y += drawn.height;
    height = Math.max(height, y - box.top);
  }
  return { items, height };
}

function tableHeading(
  text: string,
  left: number,
  top: number,
  width: number,
): { items: Drawn[]; height: number } {
  const y = top + 5.2;
  return {
    items: [
      textAt({ x: left, y: y - 1.4 }, text, { size: 3.2, bold: true }),
      {
        kind: "strokes",
        role: "frame",
        strokes: [
          [
            { x: left, y },
            { x: left + width, y },
          ],
        ],
      },
    ],
    height: 6.4,
  };
}

function tableRow(
  pack: Pack,
  row: Row,
  left: number,
  top: number,
  width: number,
  rowGap: number,
): { items: Drawn[]; height: number } {
  const nameLeft = left + 6;
  const lines = wrapText(row.name, nameSize, width - 6, pack.measure);
  const baseline = top + amountSize + 0.6;
  const nameTop = row.amount === "" ? top + 1 : top + amountSize * lineStep;
  const height = nameTop - top + linesHeight(lines.length, nameSize) + rowGap;
  const measured: Drawn[] =
    row.amount === ""
      ? []
      : [
          textAt({ x: left + width - 31, y: baseline }, "measured", { size: 2.2, role: "note" }),
          {
            kind: "strokes",
            role: "leader",
            strokes: [
              [
                { x: left + width - 20, y: baseline + 0.6 },
                { x: left + width, y: baseline + 0.6 },
              ],
            ],
          },
        ];
  return {
    items: [
      textAt({ x: left, y: baseline }, row.letter, { size: 3.4, role: "note" }),
      ...(row.amount === ""
        ? []
        : [textAt({ x: nameLeft, y: baseline }, row.amount, { size: amountSize, bold: true })]),
      ...measured,
      ...textLines(nameLeft, nameTop, lines, { size: nameSize }),
    ],
    height,
  };
}

/** What of this leaf nobody measured, below the table. */
function assumedNote(pack: Pack, leafIndex: number, table: Box): Drawn[] {
  const under = `leaves[${leafIndex}]`;
  // Where the pins might have gone does not matter once they have a place.
  const ofLeaf = assumedValues(pack.job).filter(
    ({ path }) => path.startsWith(`${under}.`) && !path.startsWith(`${under}.reach`),
  );
  if (ofLeaf.length === 0) return [];
  const names = ofLeaf.map((value) => valueInWords(value, under, pack.display)).join("; ");
  const width = table.right - table.left;
  const most = Math.floor((table.bottom - table.top) / (noteSize * lineStep) - 0.3);
  if (most < 1) return [];
  const lines = wrapText(`Only assumed for this leaf: ${names}.`, noteSize, width, pack.measure, { most });
  const top = table.bottom - linesHeight(lines.length, noteSize);
  return textLines(table.left, top, lines, { size: noteSize, role: "note" });
}
