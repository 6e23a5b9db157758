import type { Placement } from "../linkage/pins.ts";
import { type Measure, type MeasuredGate, predictReading, type Reading } from "./reading.ts";

// Invented: the east gate of Quarry lane, a farm that does not exist. The tests of this folder measure it.

export function madeUpGate(swing: "toward" | "away"): MeasuredGate {
  return {
    leaf: {
      heel: 0.03,
      length: 3.6,
      thickness: 0.05,
      face: 0.025,
      boxes: [],
      travel: { swing, openAngle: Math.PI / 2 },
    },
    postFaces: { ramSideOut: 0.07, gatewayAlong: -0.04 },
  };
}

export const madeUpPlan: Placement = {
  postPin: { along: -0.15, out: 0.15 },
  leafPin: { along: 0.9072, off: 0.085 },
  rise: 0.02,
};

/** One of each kind, pin to pin at three angles. */
export const everyMeasure: readonly Measure[] = [
  { kind: "hingeToPostPin" },
  { kind: "hingeToLeafPin" },
  { kind: "pinToPin", leafAt: "closed" },
  { kind: "pinToPin", leafAt: "open" },
  { kind: "pinToPin", leafAt: { angle: 0.7 } },
  { kind: "postPinFromClosedLine" },
  { kind: "postPinFromRamFace" },
  { kind: "postPinFromGatewayFace" },
  { kind: "leafPinFromLeafFace" },
  { kind: "leafPinFromHeel" },
];

/** The measure as a short name, e.g. `hingeToPostPin`, `pinToPin@open`. */
export function measureName(measure: Measure): string {
  if (measure.kind !== "pinToPin") return measure.kind;
  return `pinToPin@${typeof measure.leafAt === "string" ? measure.leafAt : measure.leafAt.angle}`;
}

/** Readings of the given measures on pins as they are, each off by `errors[i]` [m] (default 0). */
export function readingsOf(
  measures: readonly Measure[],
  pins: Placement,
  gate: MeasuredGate,
  errors: readonly number[] = [],
  openAngle: number = gate.leaf.travel.openAngle,
): Reading[] {
  return measures.map((measure, i) => ({
    ...measure,
    id: measureName(measure),
    value: predictReading(measure, pins, openAngle, gate).value + (errors[i] ?? 0),
  }));
}

/** Numbers in [0, 1) that are the same in every run (Mulberry32, from memory), for tests that need many. */
export function seededNumbers(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}

/** Normal deviates of standard deviation 1 from seeded numbers (Box and Muller's transform, from memory). */
export function seededNormal(seed: number): () => number {
  const next = seededNumbers(seed);
  return () => Math.sqrt(-2 * Math.log(1 - next())) * Math.cos(2 * Math.PI * next());
}
