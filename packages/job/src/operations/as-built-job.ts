import {
  type AsBuiltOutcome,
  estimateAsBuilt,
  type Limit,
  limitsOf,
  type Mend,
  type Misread,
  type Placement,
  type Prepared,
  prepare,
  reserveOf,
  type Suspect,
  smallestMend,
} from "@pintle/core";
import {
  estimateLines,
  measureText,
  mendLines,
  missingLines,
  suspectText,
} from "../findings/as-built-wording.ts";
import { reserveText } from "../findings/reserve-wording.ts";
import type { Display, Job } from "../schema/job.ts";
import type { JobLeaf } from "../schema/leaf.ts";
import { toLeaf, toPostFaces } from "../to-core/leaf-to-core.ts";
import { toPlacement } from "../to-core/pins-to-core.ts";
import { type ReadingInSi, toReadings } from "../to-core/readings-to-core.ts";
import type { AsBuiltDocument, AsBuiltLeafDocument } from "./documents.ts";
import { leafWithRam } from "./leaf-question.ts";
import { bare, inDeg, inMm, limitDocument, orNull, pinsDocument } from "./rounded.ts";

const nothing: Omit<AsBuiltLeafDocument, "id" | "lines"> = {
  pins: null,
  standardErrorsMm: null,
  openAngleDeg: null,
  residuals: [],
  misread: [],
  leftOut: [],
  reserveMm: null,
  reserveText: null,
  firstToBreak: null,
  limits: [],
  mends: [],
};

/**
 * Where the pins of every leaf really are, from the tape readings in the job, and what follows for its limits
 * (rule G18).
 *
 * Expects a job that `readJob` accepted. The planned pins are where the estimate starts from, not a reading.
 * A leaf without readings, plan or enough readings says so in its `lines`.
 *
 * ### Example
 *   const leaf = { id: "east", hingeSide: "left" as const, swing: "toward" as const, openAngleDeg: 90, lengthMm: 3600, heelMm: 30, thicknessMm: 50, faceMm: 25 };
 *   const built = asBuiltJob({ format: "pintle-job", version: 1, leaves: [leaf] });
 *   expect(built.leaves[0]?.lines[0]).toBe("No tape readings are recorded for this leaf.");
 */
export function asBuiltJob(job: Job): AsBuiltDocument {
  return { leaves: job.leaves.map((leaf) => asBuiltLeaf(job, leaf, true)) };
}

/** One leaf of `asBuiltJob`; the search for a mend, by far the longest part, is left out when not asked for. */
export function asBuiltLeaf(job: Job, leaf: JobLeaf, withMends: boolean): AsBuiltLeafDocument {
  return { id: leaf.id, ...judgeReadings(job, leaf, withMends) };
}

function judgeReadings(job: Job, leaf: JobLeaf, withMends: boolean): Omit<AsBuiltLeafDocument, "id"> {
  const display = job.display ?? "metric";
  const readings = toReadings(leaf);
  const plan = toPlacement(leaf.placement);
  if (readings.length === 0) return { ...nothing, lines: ["No tape readings are recorded for this leaf."] };
  if (plan === null) return { ...nothing, lines: ["This leaf has no planned pins to start from."] };
  const outcome = estimateFrom(leaf, plan, readings);
  if (!outcome.ok) return { ...nothing, lines: whyNoEstimate(outcome, display) };
  const all = outcome.value;
  const suspects = all.misread === null ? [] : suspectsOf(all.misread);
  // One reading that the others contradict would drag the pins with it: what follows is worked out without it.
  const [only, ...more] = suspects;
  const rest =
    only === undefined || more.length > 0
      ? null
      : estimateFrom(
          leaf,
          plan,
          readings.filter((reading) => reading.id !== only.id),
        );
  const estimate = rest?.ok ? rest.value : all;
  const leftOut = rest?.ok && only !== undefined ? [only.id] : [];
  const { postPin, leafPin } = estimate.standardErrors;
  const measured = {
    ...nothing,
    pins: pinsDocument(estimate.placement),
    standardErrorsMm: {
      postPin: { along: inMm(postPin.along), out: inMm(postPin.out) },
      leafPin: { along: inMm(leafPin.along), off: inMm(leafPin.off) },
    },
    openAngleDeg: inDeg(estimate.openAngle.value),
    residuals: all.residuals.map((one) => ({
      path: one.id,
      valueMm: inMm(one.value),
      predictedMm: inMm(one.predicted),
      normalised: orNull(one.normalised, bare),
    })),
    misread: suspects.map((suspect) => suspect.id),
    leftOut,
  };
  const lines = [
    ...suspectLines(suspects, readings, leftOut.length > 0, display),
    ...estimateLines(estimate, display),
  ];
  const withRam = leafWithRam(job, leaf);
  if (!withRam.ok) return { ...measured, lines: [...lines, `Limits: not checked; ${withRam.missing}.`] };
  const gate = asOpened(withRam.value.prepared, estimate.openAngle.value);
  return { ...measured, ...judgedAsBuilt(gate, estimate.placement, lines, display, withMends) };
}

const estimateFrom = (leaf: JobLeaf, plan: Placement, readings: readonly ReadingInSi[]): AsBuiltOutcome =>
  estimateAsBuilt({
    leaf: toLeaf(leaf),
    postFaces: toPostFaces(leaf),
    plan,
    readings,
    estimateOpenAngle: leaf.asBuilt?.estimateOpenAngle ?? false,
  });

function whyNoEstimate(outcome: Extract<AsBuiltOutcome, { ok: false }>, display: Display): readonly string[] {
  switch (outcome.reason) {
    case "badReadings":
      return outcome.faults.map((fault) => `${fault.path}: ${fault.found}; expected ${fault.expected}`);
    case "notSettled":
      return missingLines(outcome.missing, display);
    case "iterationLimit":
      return [`The estimate did not settle in ${outcome.iterations} steps; check the readings.`];
  }
}

function suspectLines(
  suspects: readonly Suspect[],
  readings: readonly ReadingInSi[],
  leftOut: boolean,
  display: Display,
): string[] {
  const name = (id: string) => {
    const reading = readings.find((one) => one.id === id);
    return reading === undefined ? id : `${measureText(reading, display)} (${id})`;
  };
  const start =
    suspects.length > 1
      ? "One of these was likely misread; measure them again"
      : "Likely misread; measure it again";
  return [
    ...suspects.map((suspect) => `${start}: ${suspectText(suspect, name(suspect.id), display)}.`),
    ...(leftOut ? ["What follows is worked out without it."] : []),
  ];
}

/** The gate with the opening angle that was found, when one was. */
function asOpened(prepared: Prepared, openAngle: number): Prepared {
  const { situation } = prepared;
  if (situation.leaf.travel.openAngle === openAngle) return prepared;
  const travel = { ...situation.leaf.travel, openAngle };
  return prepare({ ...situation, leaf: { ...situation.leaf, travel } });
}

function judgedAsBuilt(
  prepared: Prepared,
  placement: Placement,
  lines: readonly string[],
  display: Display,
  withMends: boolean,
) {
  const judge = (_: unknown, tried: Placement): Limit[] => limitsOf(prepared, tried);
  const limits = limitsOf(prepared, placement);
  const reserve = reserveOf(prepared, placement);
  const mend: Mend = withMends
    ? smallestMend(prepared.situation, placement, judge)
    : { kind: "notNeeded", notChecked: [] };
  return {
    lines: [...lines, ...mendLines(mend, display)],
    reserveMm: inMm(reserve.reserve),
    reserveText: reserveText(reserve, display),
    firstToBreak: reserve.firstToBreak?.limit ?? null,
    limits: limits.map(limitDocument),
    mends: mendsOf(mend),
  };
}

function mendsOf(mend: Mend): AsBuiltLeafDocument["mends"] {
  if (mend.kind === "notNeeded") return [];
  return (["postPin", "leafPin"] as const)
    .flatMap((pin) => {
      const one = mend[pin];
      if (one.kind !== "move") return [];
      const moved = { alongMm: inMm(one.along), acrossMm: inMm(one.across), distanceMm: inMm(one.distance) };
      return [{ pin, ...moved, pins: pinsDocument(one.placement) }];
    })
    .sort((a, b) => a.distanceMm - b.distanceMm);
}

const suspectsOf = (misread: Misread) => (misread.kind === "reading" ? [misread.suspect] : misread.suspects);
