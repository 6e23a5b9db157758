import { settingOut } from "@pintle/core";
import { dimensionWords } from "../findings/setting-out-wording.ts";
import type { Job } from "../schema/job.ts";
import { toPostFaces } from "../to-core/leaf-to-core.ts";
import type { DimensionDocument } from "./documents.ts";
import { leafWithPins } from "./leaf-question.ts";
import { inDeg, inMm } from "./rounded.ts";

export interface SetOutLeafDocument {
  readonly id: string;
  /** The leaf's position in which the ram is hung. */
  readonly leafIs: "open" | "closed";
  readonly setUpAngleDeg: number;
  /** In the order of work; `amount` and `name` are `text` in two parts. */
  readonly dimensions: readonly (DimensionDocument & { readonly amount: string; readonly name: string })[];
}

export interface SetOutDocument {
  readonly leaves: readonly SetOutLeafDocument[];
  /** Leaves that have nothing to set out yet and why. */
  readonly notSetOut: readonly { readonly id: string; readonly why: string }[];
}

/**
 * The pins that the job has, as dimensions to measure from things that exist (rule G17).
 *
 * Expects a job that `readJob` accepted. No search: `placeJob` gives the same for placements that it finds.
 *
 * ### Example
 *   const placement = { postPin: { alongMm: -154, outMm: 145 }, leafPin: { alongMm: 955, offMm: 145 } };
 *   const leaf = { id: "east", hingeSide: "left" as const, swing: "toward" as const, openAngleDeg: 90, lengthMm: 3600, heelMm: 30, thicknessMm: 50, faceMm: 25, ram: "r", placement };
 *   const ram = { id: "r", retractedMm: 760, strokeMm: 400, tube: [{ fromMm: -60, toMm: 560, halfWidthMm: 45 }], rodHalfWidthMm: 12 };
 *   const sheet = setOutJob({ format: "pintle-job", version: 1, leaves: [leaf], rams: [ram] });
 *   expect(sheet.leaves[0]?.leafIs).toBe("open");
 *   expect(sheet.leaves[0]?.dimensions[1]?.valueMm).toBe(145);
 */
export function setOutJob(job: Job): SetOutDocument {
  const leaves: SetOutLeafDocument[] = [];
  const notSetOut: { id: string; why: string }[] = [];
  for (const leaf of job.leaves) {
    const question = leafWithPins(job, leaf);
    if (!question.ok) {
      notSetOut.push({ id: leaf.id, why: question.missing });
      continue;
    }
    const { prepared, placement } = question.value;
    const sheet = settingOut(prepared.situation, placement, toPostFaces(leaf));
    leaves.push({
      id: leaf.id,
      leafIs: sheet.leafIs,
      setUpAngleDeg: inDeg(sheet.setUpAngle),
      dimensions: sheet.dimensions.map((dimension) => {
        const words = dimensionWords(dimension, job.display ?? "metric");
        const text = words.amount === "" ? words.name : `${words.amount}  ${words.name}`;
        return { id: dimension.id, valueMm: inMm(dimension.value), checks: dimension.checks, text, ...words };
      }),
    });
  }
  return { leaves, notSetOut };
}
