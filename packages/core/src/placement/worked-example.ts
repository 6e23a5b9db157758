import type { Placement } from "../linkage/pins.ts";
import type { Reach, Span } from "./reach.ts";
import type { Situation } from "./situation.ts";
import { defaultNeed } from "./situation.ts";

const anywhere = (from: number, to: number): Span => ({ from, to, step: null });

/**
 * One gate of an invented farm, for examples and first steps: a 3.6 m leaf that opens 90° toward a ram of
 * 760 mm + 400 mm, with nothing standing around. Its numbers are the check values that the tests cite.
 */
export const workedExample: {
  readonly situation: Situation;
  /** Reach in which the best reserve is 25 mm. */
  readonly reach: Reach;
  /** Pins that miss the clearance asked for by 17.7 mm. */
  readonly tight: Placement;
  /** Pins near the best in reach. */
  readonly roomy: Placement;
} = {
  situation: {
    leaf: {
      heel: 0.03,
      length: 3.6,
      thickness: 0.05,
      face: 0.025,
      boxes: [],
      travel: { swing: "toward", openAngle: Math.PI / 2 },
    },
    ram: {
      id: "demo-400",
      retracted: 0.76,
      stroke: 0.4,
      retractedMargin: 0,
      extendedMargin: 0,
      tube: [{ from: -0.06, to: 0.56, halfWidth: 0.045 }],
      rodHalfWidth: 0.012,
      speed: 0.018,
      thrust: 1500,
      longestLeaf: 4,
      heaviestLeaf: 300,
    },
    fixed: [],
    need: { ...defaultNeed, lever: 0.12 },
  },
  reach: {
    postPin: [{ bracket: "anywhere", along: anywhere(-0.26, -0.06), out: anywhere(0.08, 0.32) }],
    leafPin: [{ bracket: "anywhere", along: anywhere(0.85, 1.15), off: anywhere(0.085, 0.145) }],
    rise: 0,
  },
  tight: { postPin: { along: -0.15, out: 0.15 }, leafPin: { along: 0.9072, off: 0.085 }, rise: 0 },
  roomy: { postPin: { along: -0.154, out: 0.145 }, leafPin: { along: 0.955, off: 0.145 }, rise: 0 },
};
