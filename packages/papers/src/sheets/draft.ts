import {
  assumedValues,
  type CheckDocument,
  type Display,
  type Job,
  type JobLeaf,
  limitName,
} from "@pintle/job";
import type { Drawn } from "../scene/drawn.ts";
import type { StandsOn } from "../scene/plan-view.ts";
import type { Box } from "../scene/scene.ts";
import { checkRuler, rulerSize } from "./check-ruler.ts";
import type { MeasureText, PaperName, Sheet } from "./sheet.ts";
import { titleBlock, titleBlockHeight } from "./title-block.ts";

/** What every sheet of a pack is made from. */
export interface Pack {
  readonly job: Job;
  readonly display: Display;
  readonly paper: PaperName;
  readonly measure: MeasureText;
  readonly revision: string;
  /** As printed. */
  readonly date: string;
}

/** A sheet before it has its number, frame and title block. */
export interface Draft {
  readonly title: string;
  /** Null for a sheet about the whole job. */
  readonly leaf: JobLeaf | null;
  readonly lies: "upright" | "across";
  /** 1 : this; null for a sheet that is not to scale. */
  readonly denominator: number | null;
  readonly items: readonly Drawn[];
}

/** Kept free at every edge: printers do not reach further than about a quarter of an inch [mm]. */
const margin = 8;

const sizes: Record<PaperName, readonly [number, number]> = { a4: [210, 297], letter: [215.9, 279.4] };

/** Width and height of the paper as it lies [mm]. */
function paperSize(paper: PaperName, lies: Draft["lies"]): readonly [number, number] {
  const [narrow, wide] = sizes[paper];
  return lies === "upright" ? [narrow, wide] : [wide, narrow];
}

/** Where a sheet's own content may stand; above the title block, and the rulers of a sheet to scale. */
export function contentBox(paper: PaperName, lies: Draft["lies"], toScale: boolean): Box {
  const [width, height] = paperSize(paper, lies);
  const foot = margin + titleBlockHeight + (toScale ? rulerSize.height + 2 : 3);
  return { left: margin, top: margin, right: width - margin, bottom: height - foot };
}

/** The finished sheet: content, rulers where it is to scale, title block. */
export function finishSheet(draft: Draft, index: number, count: number, pack: Pack): Sheet {
  const [width, height] = paperSize(pack.paper, draft.lies);
  const blockTop = height - margin - titleBlockHeight;
  const box = { left: margin, top: blockTop, right: width - margin, bottom: height - margin };
  const block = titleBlock(
    box,
    {
      job: pack.job.title ?? "job without a title",
      sheet: draft.title,
      drawnFor: drawnForText(draft),
      scale: draft.denominator === null ? "not to scale" : `1 : ${draft.denominator}`,
      units: pack.display === "us" ? "ft, in" : "mm",
      revision: pack.revision,
      date: pack.date,
      assumed: assumedText(pack.job),
      number: `${index + 1} of ${count}`,
      note: pack.job.note ?? "",
    },
    pack.measure,
  );
  const ruler =
    draft.denominator === null ? [] : checkRuler({ x: margin, y: blockTop - rulerSize.height - 1 });
  return { title: sheetTitle(draft), width, height, items: [...draft.items, ...ruler, ...block] };
}

/** A sheet's title with the leaf that it is about. */
export function sheetTitle({ title, leaf }: Pick<Draft, "title" | "leaf">): string {
  return leaf === null ? title : `${title}, leaf “${leaf.id}”`;
}

function drawnForText({ leaf }: Draft): string {
  return leaf === null
    ? "the whole job"
    : `leaf “${leaf.id}”, hinge on the ${leaf.hingeSide} from the ram's side`;
}

/** What stands on every sheet that somebody could drill by, when a limit of the leaf fails; null when none does. */
export function failureText(checked: CheckDocument, leaf: JobLeaf): string | null {
  const failing = checked.findings.filter((finding) => finding.leaf === leaf.id && finding.state === "fail");
  const names = failing.filter((finding) => finding.rule === "G10").map((finding) => limitName(finding.id));
  if (failing.length === 0) return null;
  return `Do not drill by this sheet: ${names.length === 0 ? "the reserve" : names.join(", ")} ${names.length > 1 ? "fail" : "fails"}. See the sheet of limits.`;
}

/** From where a plan is seen, in a sentence. */
export function seenFromText(standsOn: StandsOn): string {
  const side = standsOn === "ramSide" ? "ram's side" : "side without the ram";
  return `Plan seen from above, for somebody who stands on the ${side}: that side is at the foot.`;
}

function assumedText(job: Job): string {
  const count = assumedValues(job).length;
  if (count === 0) return "No value of this job is marked as only assumed.";
  return `${count} ${count === 1 ? "value of this job is" : "values of this job are"} only assumed: check before drilling.`;
}
