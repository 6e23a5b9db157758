import type { Drawn } from "../scene/drawn.ts";
import type { Box } from "../scene/scene.ts";
import { textAt } from "./lay-text.ts";

/** How far one sheet lies over the next [mm]. */
export const overlap = 20;

const crossReach = 5;

/** One sheet of a drawing that is larger than the paper. */
export interface Tile {
  /** Column letter and row number, such as `B1`; empty when one sheet holds all. */
  readonly name: string;
  readonly items: readonly Drawn[];
}

/**
 * A full-size drawing cut into sheets that lap over each other, each inside `box` on its own paper.
 *
 * `window` is what must be shown, in the drawing's millimetres. In each lap there is a dashed line and two
 * crosses with the same name on both sheets: laid cross on cross, the drawing goes on.
 */
export function tiles(items: readonly Drawn[], window: Box, box: Box): Tile[] {
  const across = spans(window.left, window.right, box.right - box.left);
  const down = spans(window.top, window.bottom, box.bottom - box.top);
  const isOne = across.length === 1 && down.length === 1;
  const joints = [...jointsAcross(across, down), ...jointsDown(across, down)];
  return down.flatMap((row, j) =>
    across.map((column, i): Tile => {
      const by = { x: box.left - column.from, y: box.top - row.from };
      const shown = isOne ? items : [...items, ...joints];
      const clip: Drawn = {
        kind: "clip",
        left: box.left,
        top: box.top,
        right: box.left + column.to - column.from,
        bottom: box.top + row.to - row.from,
        items: shown.map((item) => movedDrawn(item, by.x, by.y)),
      };
      return { name: isOne ? "" : `${letter(i)}${j + 1}`, items: [clip] };
    }),
  );
}

const letter = (index: number): string => String.fromCharCode(65 + index);

interface Stretch {
  readonly from: number;
  readonly to: number;
}

/** Stretches of one length that cover from..to, centred, each lapping over the next by `overlap`. */
function spans(from: number, to: number, size: number): Stretch[] {
  const count = Math.max(1, Math.ceil((to - from - overlap) / (size - overlap)));
  const covered = count * (size - overlap) + overlap;
  const start = (from + to) / 2 - covered / 2;
  return Array.from({ length: count }, (_, index) => {
    const begin = start + index * (size - overlap);
    return { from: begin, to: begin + size };
  });
}

function jointsAcross(across: readonly Stretch[], down: readonly Stretch[]): Drawn[] {
  return across.slice(1).flatMap((column, i) => {
    const x = column.from + overlap / 2;
    return down.flatMap((row, j) => [
      cutLine(x, row.from, x, row.to),
      ...[0.35, 0.9].flatMap((share, k) =>
        joint(
          x,
          row.from + share * (row.to - row.from),
          `${letter(i)}${letter(i + 1)}${j + 1}${k === 0 ? "a" : "b"}`,
        ),
      ),
    ]);
  });
}

function jointsDown(across: readonly Stretch[], down: readonly Stretch[]): Drawn[] {
  return down.slice(1).flatMap((row, j) => {
    const y = row.from + overlap / 2;
    return across.flatMap((column, i) => [
      cutLine(column.from, y, column.to, y),
      ...[0.35, 0.9].flatMap((share, k) =>
        joint(
          column.from + share * (column.to - column.from),
          y,
          `${letter(i)}${j + 1}${j + 2}${k === 0 ? "a" : "b"}`,
        ),
      ),
    ]);
  });
}

function cutLine(x1: number, y1: number, x2: number, y2: number): Drawn {
  return {
    kind: "strokes",
    role: "cut",
    strokes: [
      [
        { x: x1, y: y1 },
        { x: x2, y: y2 },
      ],
    ],
  };
}

function joint(x: number, y: number, name: string): Drawn[] {
  return [
    {
      kind: "strokes",
      role: "frame",
      strokes: [
        [
          { x: x - crossReach, y },
          { x: x + crossReach, y },
        ],
        [
          { x, y: y - crossReach },
          { x, y: y + crossReach },
        ],
      ],
    },
    { kind: "circle", role: "frame", centre: { x, y }, radius: 2.5, fill: "none" },
    textAt({ x: x + 3, y: y - 3 }, name, { size: 2.4, role: "note" }),
  ];
}

function movedDrawn(item: Drawn, dx: number, dy: number): Drawn {
  const move = ({ x, y }: { readonly x: number; readonly y: number }) => ({ x: x + dx, y: y + dy });
  switch (item.kind) {
    case "path":
      return { ...item, spots: item.spots.map(move) };
    case "strokes":
      return { ...item, strokes: item.strokes.map(([from, to]) => [move(from), move(to)] as const) };
    case "circle":
    case "arc":
      return { ...item, centre: move(item.centre) };
    case "text":
      return { ...item, at: move(item.at) };
    case "clip":
      return {
        ...item,
        left: item.left + dx,
        right: item.right + dx,
        top: item.top + dy,
        bottom: item.bottom + dy,
        items: item.items.map((one) => movedDrawn(one, dx, dy)),
      };
  }
}
