import { clearanceSlack } from "./clearance-slack.ts";
import type { Prepared } from "./limits.ts";
import { leastDeadCentre } from "./limits.ts";
import type { SlackFunction } from "./slack-function.ts";

/** ∂/∂(d, e, φ) of a function whose slope against the turned leaf pin B is (bx, by). */
function chainLeafPin(
  slope: Float64Array,
  x: number,
  y: number,
  bx: number,
  by: number,
  c: number,
  s: number,
) {
  slope[2] = x * c + y * s;
  slope[3] = y * c - x * s;
  slope[4] = y * bx - x * by;
}

/**
 * Stroke slack at one angle: `sign` +1 keeps the length above `length`, −1 below. With both ends of the
 * travel kept, and no dead centre between them, the whole travel is kept.
 */
function strokeSlack(id: string, rise: number, length: number, sign: 1 | -1): SlackFunction {
  let last = 0;
  return {
    id,
    endsOnly: true,
    corners: [],
    bitesAtCorners: sign < 0,
    // |q| is convex: it rises above its tangent by at most move²/2|q|; its negative never does.
    excess: ({ both }) => {
      if (sign < 0) return 0;
      return last > both ? (both * both) / (2 * (last - both)) : Number.POSITIVE_INFINITY;
    },
    evaluate(pins, c, s, slope) {
      const px = pins[0] as number;
      const py = pins[1] as number;
      const d = pins[2] as number;
      const e = pins[3] as number;
      const bx = d * c - e * s;
      const by = d * s + e * c;
      const qx = bx - px;
      const qy = by - py;
      last = Math.sqrt(qx * qx + qy * qy);
      const true3 = Math.sqrt(qx * qx + qy * qy + rise * rise);
      const x = (sign * qx) / true3;
      const y = (sign * qy) / true3;
      slope[0] = -x;
      slope[1] = -y;
      chainLeafPin(slope, x, y, bx, by, c, s);
      return sign * (true3 - length);
    },
  };
}

/**
 * Lever and dead centre share one form: orientation × (P × B) − factor·|P B| (lever, factor = least arm, true
 * length) or − factor·|B|·|P B| (dead centre, factor = sin of the least angle, in plan). Both are concave in
 * the post pin for a leaf pin held, which is why errors bite at corners of their box.
 */
function armSlack(
  id: "lever" | "deadCentre",
  rise: number,
  factor: number,
  orientation: 1 | -1,
  scale: number,
): SlackFunction {
  const isLever = id === "lever";
  return {
    id,
    endsOnly: true,
    corners: [],
    bitesAtCorners: true,
    // The cross product is bilinear; |B|·|P B| lies above its tangent but for the product of both moves.
    excess: ({ post, leaf, both }) => scale * (post * leaf + (isLever ? 0 : factor * leaf * both)),
    evaluate(pins, c, s, slope) {
      const px = pins[0] as number;
      const py = pins[1] as number;
      const d = pins[2] as number;
      const e = pins[3] as number;
      const bx = d * c - e * s;
      const by = d * s + e * c;
      const qx = bx - px;
      const qy = by - py;
      const length = Math.sqrt(qx * qx + qy * qy + (isLever ? rise * rise : 0));
      const radius = isLever ? 1 : Math.sqrt(bx * bx + by * by);
      const pull = (factor * radius) / length;
      const k = scale * orientation;
      // Slope of the cross product, then of the length, then (dead centre) of the leaf-pin radius.
      slope[0] = k * by + scale * pull * qx;
      slope[1] = -k * bx + scale * pull * qy;
      let x = -k * py - scale * pull * qx;
      let y = k * px - scale * pull * qy;
      if (!isLever) {
        x -= (scale * factor * length * bx) / radius;
        y -= (scale * factor * length * by) / radius;
      }
      chainLeafPin(slope, x, y, bx, by, c, s);
      return scale * (orientation * (px * by - py * bx) - factor * radius * length);
    },
  };
}

/**
 * All limits that depend on the pins, as slack functions for placements on one side of the hinge. Clearances
 * come one for each ram section and outline: the nearest of several bodies jumps from one to another as the
 * pins move, and a search that sees only the nearest can never rule out the ridge between them.
 */
export function slackFunctions(
  prepared: Prepared,
  rise: number,
  orientation: 1 | -1,
  withCorners = true,
): SlackFunction[] {
  const { ram, need } = prepared.situation;
  const shortest = ram.retracted + ram.retractedMargin;
  const longest = ram.retracted + ram.stroke - ram.extendedMargin;
  const scale = 1 / Math.max(ram.retracted, 1e-6);
  return [
    strokeSlack("stroke.retracted", rise, shortest, 1),
    strokeSlack("stroke.extended", rise, longest, -1),
    armSlack("lever", rise, need.lever, orientation, scale),
    armSlack("deadCentre", rise, Math.sin(leastDeadCentre(need)), orientation, scale),
    ...prepared.pairs.map((pair) => clearanceSlack(pair, rise, withCorners)),
  ];
}
