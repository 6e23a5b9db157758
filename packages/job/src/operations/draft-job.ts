import type { Display, Job } from "../schema/job.ts";
import type { JobRam } from "../schema/ram.ts";

/** What the six questions of a new job found out. */
export interface JobAnswers {
  readonly title: string;
  readonly display: Display;
  readonly hingeSide: "left" | "right";
  readonly swing: "toward" | "away";
  readonly lengthMm: number;
  readonly thicknessMm: number;
  readonly openAngleDeg: number;
  readonly rams: readonly JobRam[];
}

/**
 * A job from the answers. All else is assumed and marked so: an axis in the middle of the leaf, a post as wide as a
 * common pier, a reach that a welded bracket covers (common practice, no source). The rams are those given, which
 * the job says to replace by the maker's numbers.
 *
 * ### Example
 *   const job = draftJob({ title: "Yard", display: "metric", hingeSide: "left", swing: "toward", lengthMm: 3200, thicknessMm: 50, openAngleDeg: 90, rams: [] });
 *   expect(readJob(writeJob(job)).ok).toBe(true);
 *   expect(assumedValues(job).map((value) => value.path)).toContain("leaves[0].heelMm");
 */
export function draftJob(answers: JobAnswers): Job {
  const { title, display, hingeSide, swing, lengthMm, thicknessMm, openAngleDeg, rams } = answers;
  const faceMm = Math.round(thicknessMm / 2);
  const assumed = { how: "assumed" as const };
  const tape = { how: "tape" as const };
  const outFrom = faceMm + 60;
  return {
    format: "pintle-job",
    version: 1,
    ...(title === "" ? {} : { title }),
    display,
    leaves: [
      {
        id: "leaf",
        hingeSide,
        swing,
        openAngleDeg,
        lengthMm,
        heelMm: 35,
        thicknessMm,
        faceMm,
        reach: {
          postPin: { alongMm: [-280, -60], outMm: [outFrom, outFrom + 220] },
          leafPin: {
            alongMm: [Math.round(lengthMm * 0.18), Math.round(Math.min(lengthMm * 0.5, 1600))],
            offMm: [faceMm + 50, faceMm + 120],
          },
          riseMm: 0,
        },
        post: { gatewayFaceAlongMm: -50, ramFaceOutMm: faceMm + 20 },
        fixed: [
          {
            name: "post",
            outlineMm: [
              [-300, faceMm - 230],
              [-50, faceMm - 230],
              [-50, faceMm + 20],
              [-300, faceMm + 20],
            ],
          },
        ],
        origin: {
          openAngleDeg: assumed,
          lengthMm: tape,
          thicknessMm: tape,
          heelMm: assumed,
          faceMm: assumed,
          reach: assumed,
          post: assumed,
          fixed: assumed,
        },
      },
    ],
    rams: [...rams],
    origin: { rams: { how: "assumed", note: "made-up rams; put in the maker's numbers" } },
  };
}
