import { turnSign } from "@pintle/core";
import type { Display, JobLeaf, JobPlacement, JobRam } from "@pintle/job";
import { createCanvas, type PlanPoint, type View } from "./canvas.ts";
import type { Page } from "./page.ts";
import { shownQuantity } from "./shown-quantity.ts";
import type { Style } from "./style.ts";
import { wrapped } from "./wrapped.ts";

/** What a plan is drawn of. The ram and its pins are drawn when both are known. */
export interface PlanSubject {
  readonly leaf: JobLeaf;
  readonly placement: JobPlacement | null;
  readonly ram: JobRam | null;
  readonly display: Display;
}

const noBreak = "\u00a0";

const marks = {
  fixed: "░",
  leafOpen: ":",
  leafClosed: "=",
  tubeOpen: "o",
  rodOpen: "·",
  tubeClosed: "%",
  rodClosed: "-",
  hinge: "H",
  postPin: "P",
  leafPinOpen: "g",
  leafPinClosed: "G",
} as const;

/** Room around what is drawn, and how much of a fixed thing that runs far away is shown [mm]. */
const marginMm = 60;
const fixedShownMm = 250;
/** What a column may stand for, and the length of the scale bar: round figures in either system [mm]. */
const columnSizesMm = {
  metric: [2, 5, 10, 12, 15, 20, 25, 30, 40, 50, 75, 100],
  us: [1 / 8, 1 / 4, 3 / 8, 1 / 2, 5 / 8, 3 / 4, 1, 1.25, 1.5, 2, 3, 4].map((inches) => inches * 25.4),
} as const satisfies Record<Display, readonly number[]>;
const scaleBarMm: Readonly<Record<Display, number>> = { metric: 200, us: 8 * 25.4 };

/**
 * The plan around the hinge as lines of text, seen from above with the ram's side toward the reader, so
 * that a hinge on the left (as seen from the ram's side) is on the left of the page.
 */
export function planText(subject: PlanSubject, { columns, style }: Page): string[] {
  const view = viewOf(subject, columns);
  const canvas = createCanvas(view);
  const { leaf, placement, ram } = subject;
  const open = openTurn(leaf);
  for (const { outlineMm } of leaf.fixed ?? []) canvas.fill(outlineMm, marks.fixed);
  for (const outline of leafOutlines(leaf, open)) canvas.fill(outline, marks.leafOpen);
  for (const outline of leafOutlines(leaf, 0)) canvas.fill(outline, marks.leafClosed);
  if (placement !== null) {
    const postPin: PlanPoint = [placement.postPin.alongMm, placement.postPin.outMm];
    const pinClosed = leafPinAt(placement, 0);
    const pinOpen = leafPinAt(placement, open);
    if (ram !== null) {
      const ends = [
        [pinOpen, marks.tubeOpen, marks.rodOpen],
        [pinClosed, marks.tubeClosed, marks.rodClosed],
      ] as const;
      for (const [leafPin, tubeMark, rodMark] of ends) {
        canvas.line(postPin, leafPin, rodMark);
        for (const outline of tubeOutlines(ram, postPin, leafPin)) canvas.fill(outline, tubeMark);
      }
    }
    canvas.put(pinOpen, marks.leafPinOpen);
    canvas.put(pinClosed, marks.leafPinClosed);
    canvas.put(postPin, marks.postPin);
  }
  canvas.put([0, 0], marks.hinge);
  const rows = canvas.rows().map((row) => row.replace(/[░:]+|[o·%-]+|[PGgH]+/g, (run) => inked(run, style)));
  return [...rows, "", ...legend(subject, view, columns)];
}

/** What stands still is faint, what moves in the accent's colour, points strong. */
function inked(run: string, { quiet, accent, strong }: Style): string {
  if (/[░:]/.test(run)) return quiet(run);
  return /[PGgH]/.test(run) ? strong(run) : accent(run);
}

function legend({ leaf, placement, ram, display }: PlanSubject, view: View, columns: number): string[] {
  const parts = [
    `${marks.hinge} hinge axis`,
    `${marks.leafClosed} leaf closed`,
    `${marks.leafOpen} leaf open`,
  ];
  if (placement !== null) {
    parts.push(
      `${marks.postPin} post pin`,
      `${marks.leafPinClosed} leaf pin closed`,
      `${marks.leafPinOpen} open`,
    );
    if (ram !== null) {
      parts.push(
        `${marks.tubeClosed}${marks.rodClosed} ram closed`,
        `${marks.tubeOpen}${marks.rodOpen} ram open`,
      );
    }
  }
  if ((leaf.fixed ?? []).length > 0) parts.push(`${marks.fixed} fixed`);
  const shown = (mm: number) => shownQuantity(mm, "mm", display);
  const barColumns = Math.round(scaleBarMm[display] / view.columnMm);
  const bar = barColumns >= 3 ? `|${"-".repeat(barColumns - 2)}| ${shown(scaleBarMm[display])}; ` : "";
  const scale = `one column is ${shown(view.columnMm)}, one row ${shown(2 * view.columnMm)}; seen from above, the ram's side toward you`;
  // A mark stays with its name.
  const marked = parts.map((part) => part.replaceAll(" ", noBreak)).join(", ");
  return [
    ...wrapped(marked, columns).map((line) => line.replaceAll(noBreak, " ")),
    ...wrapped(bar + scale, columns),
  ];
}

/** Turn of the leaf when open [rad], counter-clockwise in the job's frame (rule G2). */
function openTurn({ swing, openAngleDeg }: JobLeaf): number {
  const openAngle = (openAngleDeg * Math.PI) / 180;
  return turnSign({ swing, openAngle }) * openAngle;
}

function turned([along, off]: PlanPoint, turn: number): PlanPoint {
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
  return [along * cos - off * sin, along * sin + off * cos];
}

function leafPinAt({ leafPin }: JobPlacement, turn: number): PlanPoint {
  return turned([leafPin.alongMm, leafPin.offMm], turn);
}

function rectangle(from: PlanPoint, to: PlanPoint): PlanPoint[] {
  return [from, [to[0], from[1]], to, [from[0], to[1]]];
}

/** The panel and its boxes. */
function leafOutlines(leaf: JobLeaf, turn: number): PlanPoint[][] {
  const panel = rectangle([leaf.heelMm, leaf.faceMm - leaf.thicknessMm], [leaf.lengthMm, leaf.faceMm]);
  const boxes = (leaf.boxes ?? []).map(({ alongMm, offMm }) =>
    rectangle([alongMm[0], offMm[0]], [alongMm[1], offMm[1]]),
  );
  return [panel, ...boxes].map((outline) => outline.map((corner) => turned(corner, turn)));
}

/** The tube's stretches, laid on the line from the post pin to the leaf pin. */
function tubeOutlines(ram: JobRam, [px, py]: PlanPoint, [gx, gy]: PlanPoint): PlanPoint[][] {
  const direction = Math.atan2(gy - py, gx - px);
  return ram.tube.map(({ fromMm, toMm, halfWidthMm }) =>
    rectangle([fromMm, -halfWidthMm], [toMm, halfWidthMm]).map((corner) => {
      const [x, y] = turned(corner, direction);
      return [px + x, py + y];
    }),
  );
}

/** What decides is near the hinge; a long leaf runs off the drawing. */
function viewOf({ leaf, placement, ram, display }: PlanSubject, widest: number): View {
  const open = openTurn(leaf);
  const seen: PlanPoint[] = [[0, 0]];
  if (placement === null) {
    seen.push(...leafOutlines(leaf, 0).flat(), ...leafOutlines(leaf, open).flat());
  } else {
    const postPin: PlanPoint = [placement.postPin.alongMm, placement.postPin.outMm];
    for (const leafPin of [leafPinAt(placement, 0), leafPinAt(placement, open)]) {
      seen.push(leafPin, postPin, ...(ram === null ? [] : tubeOutlines(ram, postPin, leafPin).flat()));
    }
  }
  const [nearX, nearY] = [bounds(seen, 0), bounds(seen, 1)];
  const clipped = (leaf.fixed ?? []).flatMap(({ outlineMm }) =>
    outlineMm.map(([x, y]): PlanPoint => [within(x, nearX, fixedShownMm), within(y, nearY, fixedShownMm)]),
  );
  const all = [...seen, ...clipped];
  const [[fromX, toX], [fromY, toY]] = [bounds(all, 0), bounds(all, 1)];
  const fits = (columnMm: number) => (toX - fromX + 2 * marginMm) / columnMm <= widest;
  return {
    fromX: fromX - marginMm,
    toX: toX + marginMm,
    fromY: fromY - marginMm,
    toY: toY + marginMm,
    columnMm: columnSizesMm[display].find(fits) ?? Math.ceil((toX - fromX + 2 * marginMm) / widest),
    mirrored: leaf.hingeSide === "right",
  };
}

function bounds(points: readonly PlanPoint[], axis: 0 | 1): readonly [number, number] {
  const values = points.map((point) => point[axis]);
  return [Math.min(...values), Math.max(...values)];
}

function within(value: number, [from, to]: readonly [number, number], slack: number): number {
  return Math.min(Math.max(value, from - slack), to + slack);
}
