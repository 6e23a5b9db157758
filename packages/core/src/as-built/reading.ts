import type { Leaf } from "../leaf/leaf.ts";
import { type Placement, turnSign } from "../linkage/pins.ts";
import type { PostFaces } from "../placement/brackets.ts";
import type { Prediction } from "./adjustment.ts";

/** Where the leaf stands while the pins are measured: closed, at its open stop, or at a stated angle θ from closed [rad]. */
export type LeafAt = "closed" | "open" | { readonly angle: number };

/**
 * What a tape can be held to (rule G18).
 *
 * - `hingeToPostPin`, `hingeToLeafPin`: hinge axis to pin centre, square to the hinge axis (in plan);
 * - `pinToPin`: pin centre to pin centre, straight (so along the slope when one pin is higher);
 * - `postPinFromClosedLine`: post pin out from the line of the closed leaf through the hinge axis (= out);
 * - `postPinFromRamFace`: post pin out from the post's ram-side face (= out − ramSideOut);
 * - `postPinFromGatewayFace`: post pin behind the post's gateway face (= gatewayAlong − along);
 * - `leafPinFromLeafFace`: leaf pin off the leaf's ram-side face (= off − face);
 * - `leafPinFromHeel`: leaf pin from the leaf's hinge end, along the leaf (= along − heel).
 */
export type Measure =
  | { readonly kind: "hingeToPostPin" }
  | { readonly kind: "hingeToLeafPin" }
  | { readonly kind: "pinToPin"; readonly leafAt: LeafAt }
  | { readonly kind: "postPinFromClosedLine" }
  | { readonly kind: "postPinFromRamFace" }
  | { readonly kind: "postPinFromGatewayFace" }
  | { readonly kind: "leafPinFromLeafFace" }
  | { readonly kind: "leafPinFromHeel" };

/** A tape reading: what was measured, what the tape said [m], and how far off it may be (one standard error [m], default 2 mm). */
export type Reading = Measure & {
  /** Names the reading in results; unique among the readings given together. */
  readonly id: string;
  readonly value: number;
  readonly standardError?: number;
};

/** What readings are measured from: the leaf with its travel, and the post's faces where they are known. */
export interface MeasuredGate {
  readonly leaf: Leaf;
  readonly postFaces: PostFaces | null;
}

/** Standard error of a reading that states none [m]: rule G18. */
export const usualStandardError = 0.002;

/** The unknowns of the as-built problem, in the order of every gradient and covariance. */
export const unknownNames = [
  "postPin.along",
  "postPin.out",
  "leafPin.along",
  "leafPin.off",
  "openAngle",
] as const;
export type UnknownName = (typeof unknownNames)[number];

/** Turn φ of the leaf (rule G2) at which a pin-to-pin reading is taken [rad]. */
export function turnAt(leafAt: LeafAt, openAngle: number, leaf: Leaf): number {
  const angle = leafAt === "closed" ? 0 : leafAt === "open" ? openAngle : leafAt.angle;
  return turnSign(leaf.travel) * angle;
}

/**
 * What a tape should read for given pins [m], and how that changes with each unknown.
 *
 * Frame and signs: rules G1, G2, G4; `openAngle` θ [rad] is where an "open" reading finds the leaf.
 * `gradient` follows `unknownNames`: metres per metre for the pins, metres per radian for the open angle.
 * Closed form, exact to rounding. A distance of exactly zero has no direction and gets a zero gradient.
 * Throws RangeError for a post-face measure without `gate.postFaces`.
 *
 * ### Example
 *   const leaf = { heel: 0.03, length: 3.6, thickness: 0.05, face: 0.025, boxes: [],
 *     travel: { swing: "toward" as const, openAngle: Math.PI / 2 } };
 *   const pins = { postPin: { along: -0.15, out: 0.15 }, leafPin: { along: 0.9072, off: 0.085 }, rise: 0 };
 *   const closed = predictReading({ kind: "pinToPin", leafAt: "closed" }, pins, Math.PI / 2, { leaf, postFaces: null });
 *   expect(closed.value).toBeCloseTo(1.0592, 4);
 */
export function predictReading(
  measure: Measure,
  pins: Placement,
  openAngle: number,
  gate: MeasuredGate,
): Prediction {
  const { postPin, leafPin } = pins;
  switch (measure.kind) {
    case "hingeToPostPin": {
      const radius = Math.hypot(postPin.along, postPin.out);
      return { value: radius, gradient: [per(postPin.along, radius), per(postPin.out, radius), 0, 0, 0] };
    }
    case "hingeToLeafPin": {
      const radius = Math.hypot(leafPin.along, leafPin.off);
      return { value: radius, gradient: [0, 0, per(leafPin.along, radius), per(leafPin.off, radius), 0] };
    }
    case "pinToPin":
      return pinToPin(measure.leafAt, pins, openAngle, gate.leaf);
    case "postPinFromClosedLine":
      return { value: postPin.out, gradient: [0, 1, 0, 0, 0] };
    case "postPinFromRamFace":
      return { value: postPin.out - facesOf(gate, measure.kind).ramSideOut, gradient: [0, 1, 0, 0, 0] };
    case "postPinFromGatewayFace":
      return { value: facesOf(gate, measure.kind).gatewayAlong - postPin.along, gradient: [-1, 0, 0, 0, 0] };
    case "leafPinFromLeafFace":
      return { value: leafPin.off - gate.leaf.face, gradient: [0, 0, 0, 1, 0] };
    case "leafPinFromHeel":
      return { value: leafPin.along - gate.leaf.heel, gradient: [0, 0, 1, 0, 0] };
  }
}

function pinToPin(leafAt: LeafAt, pins: Placement, openAngle: number, leaf: Leaf): Prediction {
  const turn = turnAt(leafAt, openAngle, leaf);
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
  const { along: d, off: e } = pins.leafPin;
  const [leafX, leafY] = [d * cos - e * sin, d * sin + e * cos];
  const [x, y] = [leafX - pins.postPin.along, leafY - pins.postPin.out];
  const length = Math.hypot(x, y, pins.rise);
  const [ux, uy] = [per(x, length), per(y, length)];
  const perTurn = uy * leafX - ux * leafY;
  return {
    value: length,
    gradient: [
      -ux,
      -uy,
      ux * cos + uy * sin,
      uy * cos - ux * sin,
      leafAt === "open" ? turnSign(leaf.travel) * perTurn : 0,
    ],
  };
}

const per = (component: number, length: number): number => (length === 0 ? 0 : component / length);

function facesOf(gate: MeasuredGate, kind: string): PostFaces {
  if (gate.postFaces === null) throw new RangeError(`${kind} expects postFaces, found none`);
  return gate.postFaces;
}
