import type { Display, Job } from "@pintle/job";
import Table from "cli-table3";
import type { SwingDocument, SwingLeaf } from "../../documents.ts";
import { cleanText } from "../../output/clean-text.ts";
import { jobHeading } from "./job-heading.ts";
import type { Page } from "./page.ts";
import { shownQuantity } from "./shown-quantity.ts";

const noFrame = { top: "", "top-mid": "", "top-left": "", "top-right": "", bottom: "", "bottom-mid": "" };
const noLines = { "bottom-left": "", "bottom-right": "", left: "", "left-mid": "", mid: "", "mid-mid": "" };
const noEdges = { right: "", "right-mid": "", middle: "  " };

/** The series over the travel as a table, and what is least and greatest in it. */
export function swingText(job: Job, { leaves }: SwingDocument, page: Page): string[] {
  const display = job.display ?? "metric";
  return [
    ...jobHeading(job, page.style),
    ...leaves.flatMap((leaf) => [
      "",
      page.style.strong(`Leaf ${cleanText(leaf.id)}`),
      ...seriesTable(leaf, display).split("\n"),
      "",
      ...extremes(leaf, display, page),
    ]),
  ];
}

function seriesTable(leaf: SwingLeaf, display: Display): string {
  const table = new Table({
    head: ["angle", "pin to pin", "lever arm", "clearance"],
    colAligns: ["right", "right", "right", "right"],
    chars: { ...noFrame, ...noLines, ...noEdges },
    style: { head: [], border: [], "padding-left": 0, "padding-right": 0 },
  });
  const shown = (value: number | null | undefined) =>
    value == null ? "-" : shownQuantity(value, "mm", display);
  for (const [index, theta] of leaf.thetaDeg.entries()) {
    table.push([
      shownQuantity(theta, "deg", display),
      shown(leaf.pinToPinMm[index]),
      shown(leaf.leverMm[index]),
      shown(leaf.clearanceMm[index]),
    ]);
  }
  return table.toString();
}

function extremes(leaf: SwingLeaf, display: Display, page: Page): string[] {
  const mm = (value: number) => shownQuantity(value, "mm", display);
  const at = (value: number | null) => (value === null ? "" : ` at ${shownQuantity(value, "deg", display)}`);
  const { clearanceMinMm: clearance } = leaf;
  return [
    `pin to pin  ${mm(leaf.lengthClosedMm)} closed, ${mm(leaf.lengthOpenMm)} open; ${mm(leaf.lengthMinMm)} to ${mm(leaf.lengthMaxMm)} over the travel`,
    `lever arm   least ${mm(leaf.leverMinMm)}${at(leaf.leverMinAtDeg)}`,
    clearance === null
      ? "clearance   not checked"
      : `clearance   least ${mm(clearance)}${at(leaf.clearanceMinAtDeg)}`,
    ...(leaf.monotonic
      ? []
      : [page.style.bad("The ram passes dead centre: its length turns back within the travel.")]),
  ];
}
