import type { MeasuredGate, Reading } from "./reading.ts";

/** One thing wrong with what was passed in: where, what was found there and what was expected. */
export interface ReadingFault {
  /** e.g. `readings[2].value`. */
  readonly path: string;
  readonly found: string;
  readonly expected: string;
}

const offsets = new Set<Reading["kind"]>([
  "postPinFromClosedLine",
  "postPinFromRamFace",
  "postPinFromGatewayFace",
  "leafPinFromLeafFace",
  "leafPinFromHeel",
]);

/** A micrometre: no tape reads finer, and far finer ones beside ordinary ones would leave the arithmetic no digits [m]. */
const finest = 0.000001;

/** Every fault of a set of readings at once, in the order of the readings; empty when they can be used. */
export function readingFaults(
  readings: readonly Reading[],
  gate: MeasuredGate,
  rise: number,
): ReadingFault[] {
  const faults: ReadingFault[] = [];
  const firstWithId = new Map<string, number>();
  readings.forEach((reading, index) => {
    const fault = (key: string, found: unknown, expected: string): void => {
      faults.push({ path: `readings[${index}].${key}`, found: String(found), expected });
    };
    const earlier = firstWithId.get(reading.id);
    if (earlier === undefined) firstWithId.set(reading.id, index);
    else fault("id", reading.id, `an id that readings[${earlier}] does not already have`);
    if (!Number.isFinite(reading.value)) fault("value", reading.value, "a finite length [m]");
    else if (!offsets.has(reading.kind) && reading.value <= 0)
      fault("value", reading.value, "a distance > 0 [m]");
    else if (reading.kind === "pinToPin" && reading.value < Math.abs(rise))
      fault("value", reading.value, `a pin-to-pin length of at least the rise, ${Math.abs(rise)} m`);
    const { standardError } = reading;
    if (standardError !== undefined && !(Number.isFinite(standardError) && standardError >= finest))
      fault("standardError", standardError, `a finite length of at least ${finest} m`);
    if (
      reading.kind === "pinToPin" &&
      typeof reading.leafAt === "object" &&
      !Number.isFinite(reading.leafAt.angle)
    )
      fault("leafAt.angle", reading.leafAt.angle, "a finite angle [rad]");
    const needsFaces = reading.kind === "postPinFromRamFace" || reading.kind === "postPinFromGatewayFace";
    if (needsFaces && gate.postFaces === null)
      fault("kind", reading.kind, "a kind that needs no post faces, or the post faces");
  });
  return faults;
}
