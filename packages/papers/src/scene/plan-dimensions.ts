import { type DimensionId, settingOut } from "@pintle/core";
import {
  type Display,
  displayUnit,
  formatQuantity,
  fromSi,
  type Job,
  type JobLeaf,
  type JobPlacement,
  ramFor,
  toPlacement,
  toPostFaces,
  toSituation,
} from "@pintle/job";
import type { LeafPose } from "./leaf-pose.ts";
import { onDrawing } from "./plan-view.ts";
import type { DimensionShape, Spot } from "./scene.ts";

/** Which dimensions of the setting out stand on the plan. */
export interface DimensionsOnPlan {
  readonly ids: readonly DimensionId[];
  /** Letters that tie a dimension to its row on the sheet. */
  readonly letters?: Partial<Record<DimensionId, string>>;
}

/** Distance of the first and the second row of dimension lines from the body, and between rows [paper mm]. */
const firstRow = 8;
const secondRow = 16;
const rows = 8;

interface Line {
  /** Frame spots [mm]. */
  readonly from: Spot;
  readonly to: Spot;
  readonly along: Spot;
  readonly base: Spot;
  /** The side of the base on which the line lies, in the frame. */
  readonly outward: Spot;
  readonly away: number;
}

/**
 * A dimension's figure as it stands on a drawing: millimetres without their unit, inches as feet, inches and
 * sixteenths.
 *
 * ### Example
 *   expect(dimensionFigure(0.1445, "metric")).toBe("144.5");
 *   expect(dimensionFigure(0.3143, "us")).toBe("1' 0 3/8\"");
 */
export function dimensionFigure(metres: number, display: Display): string {
  return formatQuantity(Math.abs(metres), displayUnit("length", display)).replace(/ mm$/, "");
}

/** The dimensions asked for, where a person would tape them. Those that cannot be drawn in plan are left out. */
export function planDimensions(
  job: Job,
  leaf: JobLeaf,
  placement: JobPlacement,
  pose: LeafPose,
  { ids, letters }: DimensionsOnPlan,
): DimensionShape[] {
  const ram = ramFor(job, leaf);
  const inCore = toPlacement(placement);
  if (ids.length === 0 || ram === null || inCore === null) return [];
  const sheet = settingOut(toSituation(leaf, ram), inCore, toPostFaces(leaf));
  const lines = dimensionLines(leaf, placement, pose);
  return ids.flatMap((id) => {
    const dimension = sheet.dimensions.find((one) => one.id === id);
    const line = lines[id];
    if (dimension === undefined || line === undefined || Math.abs(fromSi(dimension.value, "mm")) < 0.05)
      return [];
    const figure = dimensionFigure(dimension.value, job.display ?? "metric");
    const letter = letters?.[id];
    return [onPage(line, pose, letter === undefined ? figure : `${letter}  ${figure}`, id)];
  });
}

function onPage(line: Line, pose: LeafPose, text: string, id: DimensionId): DimensionShape {
  const { view } = pose;
  const along = onDrawing(view, line.along);
  const outward = onDrawing(view, line.outward);
  const side = -along.y * outward.x + along.x * outward.y;
  return {
    kind: "dimension",
    role: "dimension",
    from: onDrawing(view, line.from),
    to: onDrawing(view, line.to),
    direction: Math.atan2(along.y, along.x),
    base: onDrawing(view, line.base),
    away: Math.sign(side) * line.away,
    text,
    part: `dimension:${id}`,
  };
}

function dimensionLines(
  leaf: JobLeaf,
  placement: JobPlacement,
  pose: LeafPose,
): Partial<Record<DimensionId, Line>> {
  const hinge: Spot = { x: 0, y: 0 };
  const post = { x: placement.postPin.alongMm, y: placement.postPin.outMm };
  const { alongMm, offMm } = placement.leafPin;
  const leafPin = pose.inFrame(alongMm, offMm);
  const corners = (leaf.fixed ?? []).flatMap((thing) => thing.outlineMm);
  const near = corners.filter(([x]) => x < leaf.heelMm + 100);
  const back = leaf.faceMm - leaf.thicknessMm;
  const behind = Math.min(post.x, ...near.map(([x]) => x), (leaf.post?.gatewayFaceAlongMm ?? 0) - 100);
  const across = Math.min(0, back, ...near.map(([, y]) => y));
  const x = { x: 1, y: 0 };
  const y = { x: 0, y: 1 };
  const leafAlong = pose.inFrame(1, 0);
  const leafOff = pose.inFrame(0, 1);
  const leafBack = { x: -leafOff.x, y: -leafOff.y };
  // A post pin in front of the hinge shares its stretch with the dimensions along a leaf that is nearly closed.
  const sharesStretch = post.x > 0 && Math.abs(leafAlong.y) < 0.5;
  const postRow = sharesStretch ? secondRow + rows : firstRow;
  const alongPost = { along: x, base: { x: 0, y: across }, outward: { x: 0, y: -1 } };
  const outPost = { along: y, base: { x: behind, y: 0 }, outward: { x: -1, y: 0 } };
  const alongLeaf = { along: leafAlong, base: pose.inFrame(0, back), outward: leafBack };
  const faces = leaf.post;
  const ramWay = unit({ x: leafPin.x - post.x, y: leafPin.y - post.y });
  // On the side of the ram that is away from the hinge.
  const hingeSide = ramWay.x * (hinge.y - post.y) - ramWay.y * (hinge.x - post.x);
  const ramOut = hingeSide > 0 ? { x: ramWay.y, y: -ramWay.x } : { x: -ramWay.y, y: ramWay.x };
  // The shorter of two dimensions stands nearer, so that no extension line runs through a figure.
  const faceAlong = faces === undefined ? Number.POSITIVE_INFINITY : faces.gatewayFaceAlongMm;
  const faceOut = faces === undefined ? Number.POSITIVE_INFINITY : faces.ramFaceOutMm;
  const hingeIsNearAlong = Math.abs(post.x) < Math.abs(post.x - faceAlong);
  const hingeIsNearOut = Math.abs(post.y) < Math.abs(post.y - faceOut);
  return {
    postPinBehindHinge: {
      from: hinge,
      to: post,
      ...alongPost,
      away: hingeIsNearAlong ? postRow : postRow + rows,
    },
    postPinOut: { from: hinge, to: post, ...outPost, away: hingeIsNearOut ? firstRow : secondRow },
    ...(faces === undefined
      ? {}
      : {
          postPinFromGatewayFace: {
            ...outermostLast({ x: faceAlong, y: across }, post, x),
            ...alongPost,
            away: hingeIsNearAlong ? postRow + rows : postRow,
          },
          postPinFromRamFace: {
            ...outermostLast({ x: behind, y: faceOut }, post, y),
            ...outPost,
            away: hingeIsNearOut ? secondRow : firstRow,
          },
        }),
    leafPinFromHinge: { from: hinge, to: leafPin, ...alongLeaf, away: secondRow },
    leafPinFromHeel: { from: pose.inFrame(leaf.heelMm, back), to: leafPin, ...alongLeaf, away: firstRow },
    leafPinFromLeafFace: {
      from: pose.inFrame(alongMm, leaf.faceMm),
      to: leafPin,
      along: leafOff,
      base: pose.inFrame(alongMm, leaf.faceMm),
      outward: leafAlong,
      away: 9,
    },
    pinToPinAtSetUp: {
      from: post,
      to: leafPin,
      along: ramWay,
      base: post,
      outward: ramOut,
      away: firstRow + 4,
    },
    hingeToPostPin: { from: hinge, to: post, along: unit(post), base: hinge, outward: y, away: 0 },
  };
}

/** The end that is farther from the hinge last: a figure that does not fit stands beyond it. */
function outermostLast(a: Spot, b: Spot, along: Spot): { from: Spot; to: Spot } {
  const reach = (spot: Spot) => Math.abs(spot.x * along.x + spot.y * along.y);
  return reach(a) > reach(b) ? { from: b, to: a } : { from: a, to: b };
}

function unit({ x, y }: Spot): Spot {
  const length = Math.hypot(x, y);
  return length === 0 ? { x: 1, y: 0 } : { x: x / length, y: y / length };
}
