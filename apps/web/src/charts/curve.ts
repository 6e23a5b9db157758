import type { Spot } from "../drawing/projection.ts";

/** One series over the leaf's angle, SI, with what it is held against. */
export interface Curve {
  readonly id: "lever" | "clearance" | "toeSpeed";
  readonly name: string;
  readonly what: "length" | "toeSpeed";
  readonly theta: Float64Array;
  readonly values: Float64Array;
  readonly limit: number | null;
}

/** The frame of a chart [px]. */
export interface Frame {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

export interface Extremes {
  readonly least: number;
  readonly leastAt: number;
  readonly greatest: number;
  readonly greatestAt: number;
}

/** Least and greatest of the samples and their angles; null when there is no number among them. */
export function extremes({ theta, values }: Curve): Extremes | null {
  let found: Extremes | null = null;
  values.forEach((value, i) => {
    if (!Number.isFinite(value)) return;
    const at = theta[i] as number;
    if (found === null) found = { least: value, leastAt: at, greatest: value, greatestAt: at };
    if (value < found.least) found = { ...found, least: value, leastAt: at };
    if (value > found.greatest) found = { ...found, greatest: value, greatestAt: at };
  });
  return found;
}

/** The value at an angle, between its samples. */
export function valueAt({ theta, values }: Curve, angle: number): number | null {
  const after = theta.findIndex((at) => at >= angle);
  const i = after < 0 ? theta.length - 1 : after;
  if (i === 0) return finite(values[0]);
  const [a, b] = [theta[i - 1] as number, theta[i] as number];
  const share = b > a ? (Math.min(angle, b) - a) / (b - a) : 0;
  return finite((values[i - 1] as number) * (1 - share) + (values[i] as number) * share);
}

const finite = (value: number | undefined) => (value !== undefined && Number.isFinite(value) ? value : null);

/** Scales of a chart: angle to the right, value up from zero or from the least if that is below. */
export function scales(curve: Curve, frame: Frame) {
  const last = curve.theta.at(-1) || 1;
  const range = extremes(curve);
  const low = Math.min(0, range?.least ?? 0, curve.limit ?? 0);
  const high = Math.max(range?.greatest ?? 1, curve.limit ?? 0) * 1.12 || 1;
  const x = (angle: number) => frame.left + (angle / last) * (frame.right - frame.left);
  const y = (value: number) => frame.bottom - ((value - low) / (high - low)) * (frame.bottom - frame.top);
  return { x, y, last, angleAt: (px: number) => ((px - frame.left) / (frame.right - frame.left)) * last };
}

/** The curve in pieces, broken where there is no number. */
export function pieces(curve: Curve, frame: Frame): Spot[][] {
  const { x, y } = scales(curve, frame);
  const found: Spot[][] = [[]];
  curve.values.forEach((value, i) => {
    if (Number.isFinite(value)) found.at(-1)?.push({ x: x(curve.theta[i] as number), y: y(value) });
    else if (found.at(-1)?.length) found.push([]);
  });
  return found.filter((piece) => piece.length > 1);
}
