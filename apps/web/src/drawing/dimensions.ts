import type { ValuePath } from "../jobs/change.ts";
import type { Bench } from "../stages/placement/bench.ts";
import { onDimension, shownDeg } from "../stages/placement/shown.ts";
import { text } from "../strings/text.ts";
import type { Dimension } from "./dimension.tsx";
import { onPlan, turnOf } from "./gate-shapes.ts";
import type { Projection, Spot } from "./projection.ts";

/** A dimension that is typed on the drawing: which value of the job it is, and how it reads there. */
export interface TypedDimension extends Dimension {
  readonly path: ValuePath;
  readonly quantity: "length" | "angle";
  /** The value as written beside the line [mm or degrees]. */
  readonly value: number;
  /** Value of the job for a number typed: a depth behind the hinge is negative in the file. */
  readonly toJob: (typed: number) => number;
}

const hinge: Spot = { x: 0, y: 0 };
const alongX: Spot = { x: 1, y: 0 };
const alongY: Spot = { x: 0, y: 1 };
const same = (value: number) => value;

/** The dimensions that place both pins, and the corner that is held. */
export function pinDimensions(bench: Bench, on: Projection): TypedDimension[] {
  const { leaf, leafIndex, display, theta } = bench;
  const pins = leaf.placement;
  if (pins === undefined) return [];
  const at = (...rest: (string | number)[]): ValuePath => ["leaves", leafIndex, ...rest];
  const px = (pixels: number) => pixels / on.scale;
  const post: Spot = { x: pins.postPin.alongMm, y: pins.postPin.outMm };
  const phi = turnOf(leaf, theta);
  const pin = onPlan(pins.leafPin.alongMm, pins.leafPin.offMm, phi);
  const leafWay = onPlan(1, 0, phi);
  const leafNormal = onPlan(0, 1, phi);
  const back = leaf.faceMm - leaf.thicknessMm - px(34);
  const corners = (leaf.fixed ?? []).flatMap((thing) => thing.outlineMm);
  const near = corners.filter(([x]) => x < 150 && x > -1200);
  // Beyond what stands there, but never out of sight.
  const inSight = (spot: Spot) => on.toPlan(spot);
  const edge = [inSight({ x: 0, y: 40 }).y, inSight({ x: 0, y: on.height - 40 }).y];
  const ys = [...near.map(([, y]) => y), post.y, 0];
  // On the side that the leaf does not swing to.
  const lineY =
    leaf.swing === "toward"
      ? Math.max(Math.min(...ys) - px(30), Math.min(...edge))
      : Math.min(Math.max(...ys) + px(44), Math.max(...edge));
  const leftEdge = Math.min(inSight({ x: 46, y: 0 }).x, inSight({ x: on.width - 46, y: 0 }).x);
  const left = Math.max(Math.min(...near.map(([x]) => x), post.x) - px(34), leftEdge);
  const written = (name: string, mm: number) => ({ name, label: onDimension(mm, display), value: mm });
  return [
    {
      id: "postAlong",
      ...written(text(post.x > 0 ? "dimension.postAhead" : "dimension.postAlong"), Math.abs(post.x)),
      path: at("placement", "postPin", "alongMm"),
      toJob: (typed) => (post.x > 0 ? typed : -typed),
      quantity: "length",
      from: hinge,
      to: post,
      along: alongX,
      through: { x: 0, y: lineY },
    },
    {
      id: "postOut",
      ...written(text("dimension.postOut"), post.y),
      path: at("placement", "postPin", "outMm"),
      toJob: same,
      quantity: "length",
      from: hinge,
      to: post,
      along: alongY,
      through: { x: left, y: 0 },
    },
    {
      id: "leafAlong",
      ...written(text("dimension.leafAlong"), pins.leafPin.alongMm),
      path: at("placement", "leafPin", "alongMm"),
      toJob: same,
      quantity: "length",
      from: hinge,
      to: pin,
      along: leafWay,
      through: { x: leafNormal.x * back, y: leafNormal.y * back },
      moving: true,
    },
    {
      id: "leafOff",
      ...written(text("dimension.leafOff"), pins.leafPin.offMm),
      path: at("placement", "leafPin", "offMm"),
      toJob: same,
      quantity: "length",
      from: onPlan(pins.leafPin.alongMm, 0, phi),
      to: pin,
      along: leafNormal,
      through: onPlan(pins.leafPin.alongMm + px(40), 0, phi),
      moving: true,
    },
    ...cornerDimensions(bench, on),
  ];
}

/** Along and out of the corner that is held: they show only then, or the paper would be full of them. */
function cornerDimensions(bench: Bench, on: Projection): TypedDimension[] {
  const { held, leaf, leafIndex, display } = bench;
  if (held?.kind !== "corner") return [];
  const thing = leaf.fixed?.[held.thing];
  const corner = thing?.outlineMm[held.corner];
  if (thing === undefined || corner === undefined) return [];
  const px = (pixels: number) => pixels / on.scale;
  const [x, y] = corner;
  const path = (axis: number): ValuePath => [
    "leaves",
    leafIndex,
    "fixed",
    held.thing,
    "outlineMm",
    held.corner,
    axis,
  ];
  const base = { from: hinge, to: { x, y }, quantity: "length" as const, moving: true };
  const sign = (value: number) => (value < 0 ? -1 : 1);
  const one = (axis: 0 | 1): TypedDimension => ({
    ...base,
    id: axis === 0 ? "cornerAlong" : "cornerOut",
    name: text(axis === 0 ? "dimension.cornerAlong" : "dimension.cornerOut", { thing: thing.name }),
    label: onDimension(Math.abs(corner[axis]), display),
    value: Math.abs(corner[axis]),
    path: path(axis),
    toJob: (typed) => sign(corner[axis]) * typed,
    along: axis === 0 ? alongX : alongY,
    through: axis === 0 ? { x: 0, y: y + sign(y) * px(20) } : { x: x + sign(x) * px(20), y: 0 },
  });
  return [one(0), one(1)];
}

/** Length and opening angle of the leaf, for the view of the whole gate. */
export function leafDimensions(bench: Bench, on: Projection): TypedDimension[] {
  const { leaf, leafIndex, display } = bench;
  const toe = { x: leaf.lengthMm, y: 0 };
  const behind = leaf.faceMm - leaf.thicknessMm - 36 / on.scale;
  return [
    {
      id: "length",
      name: text("dimension.length"),
      label: onDimension(leaf.lengthMm, display),
      value: leaf.lengthMm,
      path: ["leaves", leafIndex, "lengthMm"],
      toJob: same,
      quantity: "length",
      from: hinge,
      to: toe,
      along: alongX,
      through: { x: 0, y: behind },
    },
  ];
}

/** The opening angle as a dimension pressed at the open leaf. */
export const openAngleLabel = (bench: Bench): string =>
  text("drawn.open", { angle: shownDeg(bench.leaf.openAngleDeg) });
