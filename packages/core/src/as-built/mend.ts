import { type Placement, turnSign } from "../linkage/pins.ts";
import type { Limit } from "../placement/limit.ts";
import type { Situation } from "../placement/situation.ts";
import { nearestHolding, type Probe } from "./disc-search.ts";

export type PinName = "postPin" | "leafPin";

/** How to search for the smallest move of a pin. All lengths [m]. */
export interface MendOptions {
  /** Farthest move considered; default 0.150. */
  readonly radius?: number;
  /** How near to the smallest move; default 0.0001. */
  readonly accuracy?: number;
  /** Places where the limits hold over less than this may be missed, for limits that are not lengths; default 0.002. */
  readonly resolution?: number;
  /** Placements judged at most, for each pin; default 200 000. */
  readonly probeLimit?: number;
  readonly progress?: (pin: PinName, searchedTo: number, placementsJudged: number) => void;
  readonly signal?: { readonly aborted: boolean };
}

/** Smallest move of one pin that makes every limit hold, the other pin staying; or why there is none. */
export type PinMend =
  | {
      readonly kind: "move";
      readonly placement: Placement;
      /** Along the pin's own axes (fixed for the post pin, the leaf's for the leaf pin) and straight [m]. */
      readonly along: number;
      readonly across: number;
      readonly distance: number;
    }
  /** No move of this pin alone, up to `radius` [m], mends it. `always`: limits that failed at every position tried. */
  | { readonly kind: "none"; readonly radius: number; readonly always: readonly string[] }
  /** Stopped before it was settled; no move shorter than `searchedTo` [m] mends it. */
  | { readonly kind: "stopped"; readonly reason: "aborted" | "probeLimit"; readonly searchedTo: number };

export type Mend =
  | { readonly kind: "notNeeded"; readonly notChecked: readonly string[] }
  | {
      readonly kind: "needed";
      readonly failing: readonly string[];
      /** Limits that could not be judged: a mend does not speak for them. */
      readonly notChecked: readonly string[];
      readonly postPin: PinMend;
      readonly leafPin: PinMend;
    };

/**
 * The smallest move of one pin, in plan, that makes every limit hold (rule G18), for each pin by itself.
 *
 * Frame: rules G1, G2, G4. `limitsOf` judges a placement; a limit that is "not-checked" does not stop a mend
 * and is listed. Global within `radius`: a length limit broken by s cannot be mended within s ÷ (how many
 * times its pin's move a part of the ram can move), so no place is skipped for length limits and the dead
 * centre; for the others, places smaller than `resolution` may be missed. The distance is within `accuracy`
 * of the least, the limits hold at the result, and 5 % less in the same direction does not do.
 *
 * ### Example
 *   const travel = { swing: "toward" as const, openAngle: Math.PI / 2 };
 *   const leaf = { heel: 0.03, length: 3.6, thickness: 0.05, face: 0.025, boxes: [], travel };
 *   const ram = { id: "R", retracted: 0.76, stroke: 0.4, retractedMargin: 0, extendedMargin: 0, tube: [],
 *     rodHalfWidth: 0.012, speed: null, thrust: null, longestLeaf: null, heaviestLeaf: null };
 *   const situation = { leaf, ram, fixed: [], need: defaultNeed };
 *   const pins = { postPin: { along: -0.15, out: 0.15 }, leafPin: { along: 0.9, off: 0.085 }, rise: 0 };
 *   const clearOfWall = (_: unknown, { postPin }: typeof pins) => [{ id: "wall", unit: "m" as const,
 *     state: postPin.out >= 0.16 ? ("pass" as const) : ("fail" as const), value: postPin.out, limit: 0.16,
 *     slack: postPin.out - 0.16, atAngle: null, where: null }];
 *   const mend = smallestMend(situation, pins, clearOfWall);
 *   expect(mend.kind === "needed" && mend.postPin.kind === "move" && mend.postPin.distance).toBeCloseTo(0.01, 4);
 *   expect(mend.kind === "needed" && mend.leafPin.kind).toBe("none");
 */
export function smallestMend(
  situation: Situation,
  placement: Placement,
  limitsOf: (situation: Situation, placement: Placement) => readonly Limit[],
  options: MendOptions = {},
): Mend {
  const limits = limitsOf(situation, placement);
  const notChecked = limits.filter(({ state }) => state === "not-checked").map(({ id }) => id);
  const failing = limits.filter(({ state }) => state === "fail").map(({ id }) => id);
  if (failing.length === 0) return { kind: "notNeeded", notChecked };
  const judge = (tried: Placement): readonly Limit[] => limitsOf(situation, tried);
  const mendBy = (pin: PinName): PinMend => smallestMoveOf(pin, situation, placement, judge, options);
  return { kind: "needed", failing, notChecked, postPin: mendBy("postPin"), leafPin: mendBy("leafPin") };
}

function smallestMoveOf(
  pin: PinName,
  situation: Situation,
  placement: Placement,
  judge: (tried: Placement) => readonly Limit[],
  options: MendOptions,
): PinMend {
  const {
    radius = 0.15,
    accuracy = 0.0001,
    resolution = 0.002,
    probeLimit = 200_000,
    progress,
    signal,
  } = options;
  const steepest = steepestSlopes(situation, placement, radius);
  let always: ReadonlySet<string> | null = null;
  const probe = (x: number, y: number): Probe => {
    const failed = judge(movedPin(placement, pin, x, y)).filter(({ state }) => state === "fail");
    const ids = new Set(failed.map(({ id }) => id));
    always = always === null ? ids : new Set([...always].filter((id) => ids.has(id)));
    return {
      holds: failed.length === 0,
      emptyWithin: Math.max(0, ...failed.map((limit) => emptyRadius(limit, steepest))),
    };
  };
  const outcome = nearestHolding({
    radius,
    accuracy,
    resolution,
    probeLimit,
    probe,
    ...(progress && { progress: (searchedTo: number, judged: number) => progress(pin, searchedTo, judged) }),
    ...(signal && { signal }),
  });
  switch (outcome.kind) {
    case "found": {
      const { x: along, y: across, distance } = outcome;
      return { kind: "move", placement: movedPin(placement, pin, along, across), along, across, distance };
    }
    case "none":
      return { kind: "none", radius, always: [...(always ?? [])] };
    case "stopped":
      return { kind: "stopped", reason: outcome.reason, searchedTo: outcome.searchedTo };
  }
}

function movedPin(placement: Placement, pin: PinName, along: number, across: number): Placement {
  const { postPin, leafPin } = placement;
  return pin === "postPin"
    ? { ...placement, postPin: { along: postPin.along + along, out: postPin.out + across } }
    : { ...placement, leafPin: { along: leafPin.along + along, off: leafPin.off + across } };
}

/** How fast a slack can change with a pin's move, at most: a length [m per m], the dead-centre angle [rad per m]. */
interface Slopes {
  readonly length: number;
  readonly deadCentre: number;
}

function emptyRadius(limit: Limit, steepest: Slopes): number {
  if (limit.slack === null) return 0;
  if (limit.unit === "m") return -limit.slack / steepest.length;
  return limit.id === "deadCentre" ? -limit.slack / steepest.deadCentre : 0;
}

/**
 * A pin's move turns the pin-to-pin line by at most move ÷ its shortest length, so no part of the ram (nor the
 * hinge axis seen from the line) moves by more than 1 + its distance from the pins ÷ that length times as much.
 */
function steepestSlopes({ leaf, ram }: Situation, { postPin, leafPin }: Placement, radius: number): Slopes {
  const post = Math.hypot(postPin.along, postPin.out);
  const leafRadius = Math.hypot(leafPin.along, leafPin.off);
  const between = Math.atan2(postPin.out, postPin.along) - Math.atan2(leafPin.off, leafPin.along);
  const end = turnSign(leaf.travel) * leaf.travel.openAngle;
  // The pins are nearest in plan at an end of the travel, or in line with the hinge if the travel passes that.
  const throughLine = [-2, 0, 2].some(
    (k) => (between + k * Math.PI) * Math.sign(end) > 0 && Math.abs(between + k * Math.PI) < Math.abs(end),
  );
  const cosines = throughLine ? [1] : [Math.cos(between), Math.cos(between - end)];
  const nearest = Math.sqrt(
    Math.max(0, post ** 2 + leafRadius ** 2 - 2 * post * leafRadius * Math.max(...cosines)),
  );
  const shortest = Math.max(0.05, nearest - radius);
  const overhang = Math.max(0, ...ram.tube.map(({ from, to }) => Math.max(-from, to - nearest)));
  return {
    length: 1 + (Math.max(post, leafRadius) + radius + overhang) / shortest,
    deadCentre: 1 / shortest + 1 / Math.max(0.05, leafRadius - radius),
  };
}
