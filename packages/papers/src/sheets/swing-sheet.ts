import {
  type Display,
  displayUnit,
  formatQuantity,
  fromSi,
  type JobLeaf,
  type SwingLeafDocument,
  toNeed,
  toSi,
} from "@pintle/job";
import type { Drawn } from "../scene/drawn.ts";
import type { Box } from "../scene/scene.ts";
import { type Chart, drawChart } from "./chart.ts";
import { contentBox, type Draft, type Pack } from "./draft.ts";
import { linesHeight, textAt, textLines } from "./lay-text.ts";
import { wrapText } from "./text-lines.ts";

const chartHeight = 37;
const rowHeight = 4.6;

/** Lever arm, clearance and toe speed over the travel as charts on one angle axis, and the same as a table. */
export function swingSheet(pack: Pack, leafIndex: number, swing: SwingLeafDocument): Draft {
  const leaf = pack.job.leaves[leafIndex] as JobLeaf;
  const box = contentBox(pack.paper, "upright", false);
  const sentence = `${swingSentence(swing, pack.display)} The charts share the angle axis: degrees from closed.`;
  const lines = wrapText(sentence, 3.2, box.right - box.left, pack.measure);
  const top = box.top + linesHeight(lines.length, 3.2) + 2;
  const charts = chartsOf(leaf, swing, pack.display);
  const drawn = charts.flatMap((chart, index) => {
    const chartTop = top + index * chartHeight;
    const place = { ...box, top: chartTop, bottom: chartTop + chartHeight - 2 };
    return drawChart(chart, place, index === charts.length - 1);
  });
  const tableTop = top + charts.length * chartHeight + 3;
  return {
    title: "Swing",
    leaf,
    lies: "upright",
    denominator: null,
    items: [
      ...textLines(box.left, box.top, lines, { size: 3.2 }),
      ...drawn,
      ...table(swing, { ...box, top: tableTop }, pack.display),
    ],
  };
}

function swingSentence(swing: SwingLeafDocument, display: Display): string {
  const length = (mm: number) => formatQuantity(toSi(mm, "mm"), displayUnit("length", display));
  const clearance =
    swing.clearanceMinMm === null
      ? ""
      : `, the least clearance to the leaf ${length(swing.clearanceMinMm)} at ${angle(swing.clearanceMinAtDeg)}`;
  const lever = `The least lever arm is ${length(swing.leverMinMm)} at ${angle(swing.leverMinAtDeg)}${clearance}.`;
  const way = `Pin to pin goes from ${length(swing.lengthClosedMm)} closed to ${length(swing.lengthOpenMm)} open`;
  return swing.monotonic
    ? `${lever} ${way}.`
    : `${lever} ${way}, and turns back on the way: the ram cannot drive this.`;
}

const angle = (deg: number | null): string =>
  deg === null ? "no angle" : formatQuantity(toSi(deg, "deg"), "deg");

function chartsOf(leaf: JobLeaf, swing: SwingLeafDocument, display: Display): Chart[] {
  const isUs = display === "us";
  const unit = isUs ? "in" : "mm";
  const length = (values: readonly (number | null)[]) =>
    values.map((mm) => (mm === null ? null : isUs ? mm / 25.4 : mm));
  const need = toNeed(leaf.need);
  const limit = (metres: number) => (metres === 0 ? null : fromSi(metres, "mm") / (isUs ? 25.4 : 1));
  const hasFixed = swing.fixedClearanceMm.some((value) => value !== null);
  const speeds = swing.toeSpeedMmS.map((mm) => (mm === null ? null : isUs ? mm / 304.8 : mm / 1000));
  return [
    {
      title: "Lever arm",
      unit,
      angles: swing.thetaDeg,
      lines: [{ name: "lever arm", values: length(swing.leverMm), role: "curve" }],
      limit: limit(need.lever),
    },
    {
      title: "Clearance, ram to leaf",
      unit,
      angles: swing.thetaDeg,
      lines: [{ name: "to the leaf", values: length(swing.clearanceMm), role: "curve" }],
      limit: limit(need.clearance),
    },
    ...(hasFixed
      ? [
          {
            title: "Clearance, ram to what is fixed",
            unit,
            angles: swing.thetaDeg,
            lines: [
              { name: "to what is fixed", values: length(swing.fixedClearanceMm), role: "curve" as const },
            ],
            limit: limit(need.fixedClearance),
          },
        ]
      : []),
    ...(speeds.some((value) => value !== null)
      ? [
          {
            title: "Speed of the toe",
            unit: isUs ? "ft/s" : "m/s",
            angles: swing.thetaDeg,
            lines: [{ name: "speed", values: speeds, role: "curve" as const }],
            limit: null,
          },
        ]
      : []),
  ];
}

function table(swing: SwingLeafDocument, box: Box, display: Display): Drawn[] {
  const length = displayUnit("length", display);
  const speed = displayUnit("toeSpeed", display);
  const inUnit = (mm: number | null | undefined) =>
    mm === null || mm === undefined
      ? "–"
      : length === "mm"
        ? mm.toFixed(1)
        : formatQuantity(toSi(mm, "mm"), length);
  const columns = [
    { head: "angle", at: (row: number) => angle(swing.thetaDeg[row] ?? null) },
    { head: "pin to pin", at: (row: number) => inUnit(swing.pinToPinMm[row]) },
    { head: "lever arm", at: (row: number) => inUnit(swing.leverMm[row]) },
    { head: "clearance, leaf", at: (row: number) => inUnit(swing.clearanceMm[row]) },
    { head: "clearance, fixed", at: (row: number) => inUnit(swing.fixedClearanceMm[row]) },
    {
      head: "speed of toe",
      at: (row: number) => {
        const mm = swing.toeSpeedMmS[row];
        return mm === null || mm === undefined
          ? "–"
          : `${fromSi(toSi(mm, "mm/s"), speed).toFixed(2)} ${speed}`;
      },
    },
  ];
  const step = (box.right - box.left) / columns.length;
  const right = (index: number) => box.left + (index + 1) * step - 4;
  const most = Math.max(3, Math.floor((box.bottom - box.top - 7) / rowHeight));
  const rows = everyFew(swing.thetaDeg.length, most);
  const lineAt = box.top + 5;
  return [
    ...columns.map((column, index) =>
      textAt({ x: right(index), y: box.top + 3.4 }, column.head, { size: 2.7, bold: true, anchor: "end" }),
    ),
    {
      kind: "strokes",
      role: "frame",
      strokes: [
        [
          { x: box.left, y: lineAt },
          { x: box.right, y: lineAt },
        ],
      ],
    },
    ...rows.flatMap((row, line) =>
      columns.map((column, index) =>
        textAt({ x: right(index), y: lineAt + (line + 0.85) * rowHeight }, column.at(row), {
          size: 2.9,
          anchor: "end",
        }),
      ),
    ),
  ];
}

/** Row numbers from first to last, at most `most`, evenly spaced by a multiple of 5 where there are many. */
function everyFew(count: number, most: number): number[] {
  const step = [1, 5, 10, 15, 20, 30, 45].find((few) => Math.ceil((count - 1) / few) + 1 <= most) ?? count;
  const rows: number[] = [];
  for (let row = 0; row < count - 1; row += step) rows.push(row);
  return [...rows, count - 1];
}
