import type { Display, JobLeaf, MapDocument } from "@pintle/job";
import type { Page } from "./page.ts";
import { shownQuantity, shownReserve } from "./shown-quantity.ts";
import { wrapped } from "./wrapped.ts";

/** From the least reserve to the most. */
const shades = ["░", "▒", "▓", "█"];
const doesNotFit = "·";
const outOfReach = " ";
const bestMark = "X";

/** Steps between shades that read well [mm]. */
const stepsMm = {
  metric: [0.5, 1, 1.5, 2, 2.5, 3, 4, 5, 6, 8, 10, 15, 20, 25, 50],
  us: [1 / 16, 1 / 8, 3 / 16, 1 / 4, 5 / 16, 3 / 8, 1 / 2, 3 / 4, 1, 2].map((inches) => inches * 25.4),
} as const satisfies Record<Display, readonly number[]>;

/**
 * Where the post pin may go, as shades between contours (rule G14): seen from above as the plan is, the ram's
 * side toward the reader, the hinge on its own side.
 */
export function reserveMapPicture(map: MapDocument, leaf: JobLeaf, display: Display, page: Page): string[] {
  const { alongMm, outMm, reserveMm } = map;
  const mm = (value: number) => shownQuantity(value, "mm", display);
  const best = reserveMm.reduce<number>(
    (most, value) => Math.max(most, value ?? most),
    Number.NEGATIVE_INFINITY,
  );
  const step = stepsMm[display].find((one) => one * shades.length >= best) ?? Math.ceil(best / shades.length);
  const columns = alongMm.map((_, index) => index);
  if (leaf.hingeSide === "right") columns.reverse();
  const labels = outMm.map((value, row) => (row % 4 === 0 || row === outMm.length - 1 ? mm(value) : ""));
  const margin = Math.max(...labels.map((label) => label.length));
  const lines = outMm.map((_, row) => {
    const cells = columns.map((column) =>
      markOf(reserveMm[row * alongMm.length + column] ?? null, step, best),
    );
    return `${(labels[row] ?? "").padStart(margin)} ${page.style.accent(cells.join(""))}`.trimEnd();
  });
  const [first = 0, last = 0] = [alongMm[columns[0] ?? 0], alongMm[columns.at(-1) ?? 0]];
  const foot = `${mm(first)}${mm(last).padStart(Math.max(mm(last).length + 1, alongMm.length - mm(first).length))}`;
  return [
    page.style.strong("Where the post pin may go"),
    ...wrapped(
      `Seen from above, the ram's side toward you: across, along the closed leaf's line from the hinge axis; down, out from that line.`,
      page.columns,
    ),
    ...lines,
    `${" ".repeat(margin)} ${foot}`,
    ...wrapped(legend(step, best, display), page.columns),
  ];
}

function markOf(reserve: number | null, step: number, best: number): string {
  if (reserve === null) return outOfReach;
  if (reserve < 0) return doesNotFit;
  if (reserve === best) return bestMark;
  return shades[Math.min(shades.length - 1, Math.floor(reserve / step))] ?? outOfReach;
}

function legend(step: number, best: number, display: Display): string {
  const mm = (value: number) => shownQuantity(value, "mm", display);
  if (best < 0) return `${doesNotFit} does not fit`;
  const bands = shades.map((shade, index) => {
    const [from, to] = [mm(index * step), mm((index + 1) * step)];
    return index === shades.length - 1 ? `${shade} over ${from}` : `${shade} ${from} to ${to}`;
  });
  return `Reserve: ${bands.join(", ")}; ${bestMark} most, ${shownReserve(best, display)}; ${doesNotFit} does not fit.`;
}
