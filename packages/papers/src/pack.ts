import { checkJob, type Job, jsonText, setOutJob, swingJob } from "@pintle/job";
import { dxfFile } from "./dxf/dxf-file.ts";
import { fileNamePart } from "./file-name.ts";
import { pdfFile } from "./pdf/pdf-file.ts";
import { type PackFonts, pdfTextMeasure } from "./pdf/pdf-fonts.ts";
import type { StandsOn } from "./scene/plan-view.ts";
import { cautionsSheet, withoutPinsText } from "./sheets/cautions-sheet.ts";
import { type Draft, failureText, finishSheet, type Pack } from "./sheets/draft.ts";
import { jobMark } from "./sheets/job-mark.ts";
import { limitsSheet } from "./sheets/limits-sheet.ts";
import { gateSheet, leafPlan, planSheet } from "./sheets/plan-sheet.ts";
import { settingOutSheet } from "./sheets/setting-out-sheet.ts";
import type { PaperName, Sheet } from "./sheets/sheet.ts";
import { swingSheet } from "./sheets/swing-sheet.ts";
import { templateSheets } from "./sheets/template-sheets.ts";
import { svgSheet } from "./svg/svg-sheet.ts";
import { utf8 } from "./utf8.ts";

export interface PackOptions {
  readonly fonts: PackFonts;
  /** Day of issue; given, so that the same job and day make the same papers. Printed as its UTC day. */
  readonly date: Date;
  /** Letter for a job in feet and inches, A4 for others, unless given. */
  readonly paper?: PaperName;
  /** The reader's side of the gate in plans; the ram's side unless given. */
  readonly standsOn?: StandsOn;
  /** As printed; a mark of the job's content unless given. */
  readonly revision?: string;
}

export interface PackFile {
  /** Letters, digits, hyphens and one dot: safe on every file system. */
  readonly name: string;
  readonly bytes: Uint8Array;
}

export interface PackOfJob {
  /** The papers as one PDF, then for each leaf the plan as SVG and DXF. */
  readonly files: readonly PackFile[];
  /** What could not be drawn and why, in sentences. */
  readonly notes: readonly string[];
}

/**
 * The papers of a job's placement stage (rule F10): cautions, the plan of the gate, and for each leaf setting
 * out, plan, full-size templates of both pins, limits and swing; the plan of each leaf also as SVG and DXF.
 *
 * Expects a job that `readJob` accepted. A leaf without ram or pins gets the sheets that it can have, and a note.
 * Throws what the font reader throws when the fonts are none.
 *
 * ### Example
 *   const { readFileSync } = await import("node:fs");
 *   const file = "node_modules/@expo-google-fonts/ibm-plex-sans/400Regular/IBMPlexSans_400Regular.ttf";
 *   const font = new Uint8Array(readFileSync(file));
 *   const leaf = { id: "east", hingeSide: "left" as const, swing: "toward" as const, openAngleDeg: 90, lengthMm: 3600, heelMm: 30, thicknessMm: 50, faceMm: 25 };
 *   const job = { format: "pintle-job" as const, version: 1 as const, title: "Yard", leaves: [leaf] };
 *   const pack = await packOf(job, { fonts: { regular: font, bold: font }, date: new Date(0) });
 *   expect(pack.files[0]?.name).toBe("yard-papers.pdf");
 */
export async function packOf(job: Job, options: PackOptions): Promise<PackOfJob> {
  const pack = packFrom(job, options);
  const standsOn = options.standsOn ?? "ramSide";
  const { sheets, notes } = sheetsOf(pack, standsOn);
  const stem = fileNamePart(job.title ?? "", "job");
  const about = {
    title: `${job.title ?? "Gate"}: papers of the placement`,
    subject:
      "Setting out, plan, templates, limits and swing of a motorised gate; predictions, to be proved by measuring",
    date: options.date,
  };
  const pdf = await pdfFile(sheets, about, options.fonts);
  // An SVG is shown in whatever font its reader has; the widest usual ones are a fifth wider than ours.
  const roomy: Pack = { ...pack, measure: (text, size, bold) => 1.22 * pack.measure(text, size, bold) };
  const plans = job.leaves.flatMap((leaf, index): PackFile[] => {
    const draft = planSheet(roomy, index, standsOn);
    const name = `${stem}-plan-${index + 1}-${fileNamePart(leaf.id, "leaf")}`;
    const dxf = dxfFile(leafPlan(pack, index, standsOn), draft.denominator ?? 1);
    return [
      { name: `${name}.svg`, bytes: utf8(svgSheet(finishSheet(draft, index, job.leaves.length, roomy))) },
      { name: `${name}.dxf`, bytes: utf8(dxf) },
    ];
  });
  return { files: [{ name: `${stem}-papers.pdf`, bytes: pdf }, ...plans], notes };
}

function packFrom(job: Job, options: PackOptions): Pack {
  return {
    job,
    display: job.display ?? "metric",
    paper: options.paper ?? (job.display === "us" ? "letter" : "a4"),
    measure: pdfTextMeasure(options.fonts),
    revision: options.revision ?? jobMark(jsonText(job)),
    date: options.date.toISOString().slice(0, 10),
  };
}

function sheetsOf(pack: Pack, standsOn: StandsOn): { sheets: Sheet[]; notes: string[] } {
  const { job } = pack;
  const setOut = setOutJob(job);
  const swings = swingJob(job, { stepDeg: 1 });
  const checked = checkJob(job);
  const notes = setOut.notSetOut.map(({ id, why }) => withoutPinsText({ id }, why));
  const gate = gateSheet(pack, standsOn);
  const drafts: Draft[] = [
    ...(gate === null ? [] : [gate]),
    ...job.leaves.flatMap((leaf, index): Draft[] => {
      const out = setOut.leaves.find(({ id }) => id === leaf.id);
      const swing = swings.leaves.find(({ id }) => id === leaf.id);
      const failure = failureText(checked, leaf);
      return [
        ...(out === undefined ? [] : [settingOutSheet(pack, index, out, standsOn, failure)]),
        planSheet(pack, index, standsOn),
        ...templateSheets(pack, index, failure),
        limitsSheet(pack, index, checked),
        ...(swing === undefined ? [] : [swingSheet(pack, index, swing)]),
      ];
    }),
  ];
  const all = [cautionsSheet(pack, drafts, checked, notes), ...drafts];
  return { sheets: all.map((draft, index) => finishSheet(draft, index, all.length, pack)), notes };
}
