import type { Placement } from "../src/linkage/pins.ts";
import { prepare } from "../src/placement/limits.ts";
import type { Reach } from "../src/placement/reach.ts";
import type { Situation } from "../src/placement/situation.ts";
import type { Ram } from "../src/ram/ram.ts";

// The gate of an invented farm with an invented ram: the job file's own example, millimetres and degrees.
const mm = 1e-3;
const degree = Math.PI / 180;

/** The same job as the command line reads it. Post pin and leaf pin may be moved, so that many jobs differ. */
export function jobText(moveMm = 0): string {
  return JSON.stringify({
    format: "pintle-job",
    version: 1,
    title: "Quarry lane, east gate",
    display: "metric",
    leaves: [
      {
        id: "east",
        hingeSide: "left",
        swing: "toward",
        openAngleDeg: 92,
        lengthMm: 3600,
        heelMm: 30,
        thicknessMm: 50,
        faceMm: 25,
        heightMm: 1250,
        groundGapMm: 90,
        ram: "demo-ram-400",
        placement: {
          postPin: { alongMm: -150 - moveMm, outMm: 150 + moveMm },
          leafPin: { alongMm: 950 + moveMm, offMm: 140 },
          riseMm: 0,
        },
        reach: {
          postPin: { alongMm: [-260, -60], outMm: [80, 320] },
          leafPin: { alongMm: [600, 1400], offMm: [85, 145] },
        },
        need: { clearanceMm: 50, fixedClearanceMm: 15, leverMm: 120, forceFactor: 1.5 },
        fixed: [
          {
            name: "pier",
            outlineMm: [
              [-440, -215],
              [-40, -215],
              [-40, 70],
              [-440, 70],
            ],
          },
        ],
      },
    ],
    rams: [
      {
        id: "demo-ram-400",
        retractedMm: 760,
        strokeMm: 400,
        retractedMarginMm: 10,
        extendedMarginMm: 10,
        tube: [{ fromMm: -60, toMm: 560, halfWidthMm: 45 }],
        rodHalfWidthMm: 12,
        thrustN: 1500,
        speedMmS: 18,
        supplyV: 24,
      },
    ],
  });
}

const ram: Ram = {
  id: "demo-ram-400",
  retracted: 760 * mm,
  stroke: 400 * mm,
  retractedMargin: 10 * mm,
  extendedMargin: 10 * mm,
  tube: [{ from: -60 * mm, to: 560 * mm, halfWidth: 45 * mm }],
  rodHalfWidth: 12 * mm,
  speed: 18 * mm,
  thrust: 1500,
  longestLeaf: null,
  heaviestLeaf: null,
};

/** Everything that the example's placement is judged against, SI. */
export const situation: Situation = {
  leaf: {
    heel: 30 * mm,
    length: 3600 * mm,
    thickness: 50 * mm,
    face: 25 * mm,
    boxes: [],
    travel: { swing: "toward", openAngle: 92 * degree },
  },
  ram,
  fixed: [
    {
      name: "pier",
      outline: [
        { x: -440 * mm, y: -215 * mm },
        { x: -40 * mm, y: -215 * mm },
        { x: -40 * mm, y: 70 * mm },
        { x: -440 * mm, y: 70 * mm },
      ],
    },
  ],
  need: { clearance: 50 * mm, fixedClearance: 15 * mm, lever: 120 * mm, deadCentre: 5 * degree, sweep: 0 },
};

export const prepared = prepare(situation);

export const placement: Placement = {
  postPin: { along: -150 * mm, out: 150 * mm },
  leafPin: { along: 950 * mm, off: 140 * mm },
  rise: 0,
};

const between = (from: number, to: number) => ({ from: from * mm, to: to * mm, step: null });

/** 200 × 240 mm for the post pin, 800 × 60 mm for the leaf pin. */
export const reach: Reach = {
  postPin: [{ bracket: "anywhere", along: between(-260, -60), out: between(80, 320) }],
  leafPin: [{ bracket: "anywhere", along: between(600, 1400), off: between(85, 145) }],
  rise: 0,
};
