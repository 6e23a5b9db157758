import type { Display, Job, SwingDocument, SwingLeafDocument } from "@pintle/job";
import { cleanText } from "../../output/clean-text.ts";
import { jobHeading } from "./job-heading.ts";
import { leafHeading } from "./leaf-heading.ts";
import type { Page } from "./page.ts";
import { plainTable } from "./plain-table.ts";
import { sentence } from "./sentence.ts";
import { shownQuantity, shownToeSpeed } from "./shown-quantity.ts";
import { sparkline } from "./sparkline.ts";
import { wrapped } from "./wrapped.ts";

interface Series {
  readonly head: string;
  readonly values: readonly (number | null)[];
  readonly shown: (value: number) => string;
}

/** Curves over the travel, what is least and greatest in them, and the table behind. */
export function swingText(job: Job, { leaves, notSwung }: SwingDocument, page: Page): string[] {
  const display = job.display ?? "metric";
  return [
    ...jobHeading(job, page.style),
    ...leaves.flatMap((leaf) => {
      const all = seriesOf(leaf, display);
      return [
        ...leafHeading(job, leaf.id, page),
        ...curves(leaf, all, display, page),
        "",
        ...extremes(leaf, display, page),
        "",
        ...seriesTable(leaf, all, display),
      ];
    }),
    ...notSwung.flatMap(({ id, why }) => [
      ...leafHeading(job, id, page),
      ...wrapped(sentence(`not followed: ${cleanText(why)}`), page.columns),
    ]),
  ];
}

/** The series that there are values for. */
function seriesOf(leaf: SwingLeafDocument, display: Display): Series[] {
  const mm = (value: number) => shownQuantity(value, "mm", display);
  const all: Series[] = [
    { head: "pin to pin", values: leaf.pinToPinMm, shown: mm },
    { head: "lever arm", values: leaf.leverMm, shown: mm },
    { head: "clear of leaf", values: leaf.clearanceMm, shown: mm },
    { head: "clear of fixed", values: leaf.fixedClearanceMm, shown: mm },
    { head: "toe speed", values: leaf.toeSpeedMmS, shown: (value) => shownToeSpeed(value, display) },
  ];
  return all.filter(({ values }) => values.some((value) => value !== null));
}

function curves(leaf: SwingLeafDocument, all: readonly Series[], display: Display, page: Page): string[] {
  const name = Math.max(...all.map(({ head }) => head.length));
  const ranges = all.map(({ values, shown }) => {
    const known = values.filter((value) => value !== null);
    return `${shown(Math.min(...known))} to ${shown(Math.max(...known))}`;
  });
  const range = Math.max(...ranges.map((text) => text.length));
  const columns = Math.min(60, page.columns - name - range - 4);
  const [closed, open] = [leaf.thetaDeg[0] ?? 0, leaf.thetaDeg.at(-1) ?? 0].map((deg) =>
    shownQuantity(deg, "deg", display),
  );
  const axis = `closed ${closed}`;
  return [
    ...all.map(({ head, values }, index) =>
      `${head.padEnd(name)}  ${page.style.accent(sparkline(values, columns))}  ${ranges[index]}`.trimEnd(),
    ),
    page.style.quiet(`${" ".repeat(name)}  ${axis}${`open ${open}`.padStart(columns - axis.length)}`),
  ];
}

function seriesTable(leaf: SwingLeafDocument, all: readonly Series[], display: Display): string[] {
  const columns = ["angle", ...all.map(({ head }) => head)].map((head) => ({
    head,
    align: "right" as const,
  }));
  const rows = leaf.thetaDeg.map((theta, index) => [
    shownQuantity(theta, "deg", display),
    ...all.map(({ values, shown }) => {
      const value = values[index] ?? null;
      return value === null ? "-" : shown(value);
    }),
  ]);
  return plainTable(columns, rows);
}

function extremes(leaf: SwingLeafDocument, display: Display, page: Page): string[] {
  const mm = (value: number) => shownQuantity(value, "mm", display);
  const deg = (value: number) => shownQuantity(value, "deg", display);
  const at = (value: number | null) => (value === null ? "" : ` at ${deg(value)}`);
  const { clearanceMinMm: clearance } = leaf;
  const lines = [
    `Pin to pin: ${mm(leaf.lengthClosedMm)} closed, ${mm(leaf.lengthOpenMm)} open; ${mm(leaf.lengthMinMm)} to ${mm(leaf.lengthMaxMm)} over the travel.`,
    `Lever arm: least ${mm(leaf.leverMinMm)}${at(leaf.leverMinAtDeg)}.`,
    clearance === null
      ? "Clearance to the leaf: not checked."
      : `Clearance to the leaf: least ${mm(clearance)}${at(leaf.clearanceMinAtDeg)}.`,
    `The ram turns through ${deg(leaf.postBracketTurn.throughDeg)} in its post bracket, ${deg(leaf.leafBracketTurn.throughDeg)} in its leaf bracket.`,
  ];
  return [
    ...lines.flatMap((line) => wrapped(line, page.columns)),
    ...(leaf.monotonic
      ? []
      : [page.style.bad("The ram passes dead centre: its length turns back within the travel.")]),
  ];
}
