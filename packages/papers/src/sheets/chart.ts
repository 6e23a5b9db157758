import type { Drawn } from "../scene/drawn.ts";
import type { Box, Spot } from "../scene/scene.ts";
import { textAt } from "./lay-text.ts";

/** One line over the leaf angle; null where there is nothing to draw. */
export interface ChartLine {
  readonly name: string;
  readonly values: readonly (number | null)[];
  readonly role: "curve" | "fixed" | "ghost";
}

export interface Chart {
  readonly title: string;
  /** Unit of the values, as printed. */
  readonly unit: string;
  readonly angles: readonly number[];
  readonly lines: readonly ChartLine[];
  /** What must not be fallen short of; null without a limit. */
  readonly limit: number | null;
}

const left = 14;
const head = 6;
const foot = 6;

/** A chart over the leaf angle in degrees, drawn into `box` [mm], titles and figures included. */
export function drawChart(chart: Chart, box: Box, withAngles: boolean): Drawn[] {
  const field: Box = {
    left: box.left + left,
    top: box.top + head,
    right: box.right - 2,
    bottom: box.bottom - (withAngles ? foot : 2),
  };
  const known = chart.lines.flatMap((line) => line.values.filter((value) => value !== null));
  const all = [...known, ...(chart.limit === null ? [] : [chart.limit]), 0];
  const ticks = niceTicks(Math.min(...all), Math.max(...all), 4);
  const low = Math.min(ticks[0] ?? 0, ...all);
  const high = ticks[ticks.length - 1] ?? 1;
  const first = chart.angles[0] ?? 0;
  const last = chart.angles[chart.angles.length - 1] ?? 1;
  const x = (angle: number) => field.left + ((angle - first) / (last - first)) * (field.right - field.left);
  const y = (value: number) => field.bottom - ((value - low) / (high - low)) * (field.bottom - field.top);
  const angleTicks = [...range(0, last, last > 100 ? 20 : 10).filter((angle) => last - angle > 3), last];
  return [
    textAt({ x: box.left, y: box.top + 3.4 }, `${chart.title}, ${chart.unit}`, { size: 3.2, bold: true }),
    ...grid(field, angleTicks.map(x), ticks.map(y)),
    ...ticks.map((tick) =>
      textAt({ x: field.left - 1.5, y: y(tick) + 0.9 }, plain(tick), {
        size: 2.5,
        role: "note",
        anchor: "end",
      }),
    ),
    ...(withAngles
      ? angleTicks.map((angle) =>
          textAt({ x: x(angle), y: field.bottom + 4 }, `${plain(angle)}°`, {
            size: 2.5,
            role: "note",
            anchor: "middle",
          }),
        )
      : []),
    ...limitLine(chart.limit, field, y),
    ...chart.lines.flatMap((line) => curve(line, chart.angles, x, y)),
    ...legend(chart, box),
  ];
}

function grid(field: Box, xs: readonly number[], ys: readonly number[]): Drawn[] {
  const strokes: (readonly [Spot, Spot])[] = [
    ...xs.map(
      (at) =>
        [
          { x: at, y: field.top },
          { x: at, y: field.bottom },
        ] as const,
    ),
    ...ys.map(
      (at) =>
        [
          { x: field.left, y: at },
          { x: field.right, y: at },
        ] as const,
    ),
  ];
  return [{ kind: "strokes", role: "grid", strokes }];
}

function limitLine(limit: number | null, field: Box, y: (value: number) => number): Drawn[] {
  if (limit === null) return [];
  const at = y(limit);
  return [
    {
      kind: "strokes",
      role: "limit",
      strokes: [
        [
          { x: field.left, y: at },
          { x: field.right, y: at },
        ],
      ],
    },
  ];
}

/** Pieces where the values are known. */
function curve(
  line: ChartLine,
  angles: readonly number[],
  x: (angle: number) => number,
  y: (value: number) => number,
): Drawn[] {
  const pieces: Spot[][] = [[]];
  line.values.forEach((value, index) => {
    const angle = angles[index];
    if (value === null || angle === undefined) pieces.push([]);
    else pieces[pieces.length - 1]?.push({ x: x(angle), y: y(value) });
  });
  return pieces
    .filter((spots) => spots.length > 1)
    .map((spots) => ({ kind: "path", role: line.role, spots, closed: false, fill: "none", stroked: true }));
}

/** Names of the lines at the right of the title; the limit's too. */
function legend(chart: Chart, box: Box): Drawn[] {
  const entries = [
    ...(chart.lines.length > 1 ? chart.lines.map(({ name, role }) => ({ name, role })) : []),
    ...(chart.limit === null ? [] : [{ name: `limit ${plain(chart.limit)}`, role: "limit" as const }]),
  ];
  const step = 38;
  return entries.flatMap((entry, index): Drawn[] => {
    const at = box.right - 2 - (entries.length - index) * step;
    return [
      {
        kind: "strokes",
        role: entry.role,
        strokes: [
          [
            { x: at, y: box.top + 2.4 },
            { x: at + 8, y: box.top + 2.4 },
          ],
        ],
      },
      textAt({ x: at + 10, y: box.top + 3.3 }, entry.name, { size: 2.6, role: "note" }),
    ];
  });
}

/** Round values from at or below `low` to at or above `high`, about `count` steps. */
export function niceTicks(low: number, high: number, count: number): number[] {
  const width = high > low ? high - low : 1;
  const raw = width / count;
  const decade = 10 ** Math.floor(Math.log10(raw));
  const step = ([1, 2, 2.5, 5, 10].find((factor) => factor * decade >= raw - 1e-12) ?? 10) * decade;
  const first = Math.floor(low / step + 1e-9);
  const last = Math.max(first + 1, Math.ceil(high / step - 1e-9));
  return Array.from({ length: last - first + 1 }, (_, index) => (first + index) * step + 0);
}

function range(from: number, to: number, step: number): number[] {
  return Array.from({ length: Math.floor((to - from) / step + 1e-9) + 1 }, (_, index) => from + index * step);
}

/** Without the dust of binary fractions. */
const plain = (value: number): string => String(Math.round(value * 1000) / 1000 + 0);
