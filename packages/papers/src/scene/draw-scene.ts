import { drawDimension } from "./draw-dimension.ts";
import type { Drawn, DrawnStrokes, FlatFill } from "./drawn.ts";
import { hatchStrokes } from "./hatch.ts";
import type { Box, MarkShape, OutlineShape, Scene, Shape, Spot, TextShape } from "./scene.ts";
import { roughTextWidth } from "./text-width.ts";

/** Where a scene lies on paper: scale 1 : `denominator`, the scene's origin at `origin` [paper mm]. */
export interface OnPaper {
  readonly denominator: number;
  readonly origin: Spot;
}

const hatchSpacing = 2.2;
const pinRadius = 1.5;
const hingeRadius = 1.1;
const centreLineReach = 2.2;
/** From here on marks are drawn smaller, or they would cover what they mark. */
const smallScale = 30;

/**
 * A scene at a scale as strokes and texts in paper millimetres.
 *
 * Throws RangeError when the scale is not positive.
 *
 * ### Example
 *   const line = { kind: "line" as const, role: "fixed" as const, from: { x: 0, y: 0 }, to: { x: 1000, y: 0 } };
 *   const scene = { shapes: [line], extent: { left: 0, top: 0, right: 1000, bottom: 0 } };
 *   const [drawn] = drawScene(scene, { denominator: 10, origin: { x: 20, y: 30 } });
 *   expect(drawn).toMatchObject({ kind: "strokes", strokes: [[{ x: 20, y: 30 }, { x: 120, y: 30 }]] });
 */
export function drawScene(scene: Scene, onPaper: OnPaper): Drawn[] {
  if (!(onPaper.denominator > 0))
    throw new RangeError(`drawScene found a scale of 1 : ${onPaper.denominator}; it expects more than 0`);
  return scene.shapes.flatMap((shape) => drawShape(shape, onPaper));
}

/**
 * A spot of a scene on paper.
 *
 * ### Example
 *   expect(paperSpot({ denominator: 10, origin: { x: 20, y: 30 } }, { x: 100, y: -50 })).toEqual({ x: 30, y: 25 });
 */
export function paperSpot({ denominator, origin }: OnPaper, spot: Spot): Spot {
  return { x: origin.x + spot.x / denominator, y: origin.y + spot.y / denominator };
}

/**
 * The origin that centres a scene's extent in a box on paper.
 *
 * ### Example
 *   const extent = { left: -100, top: 0, right: 300, bottom: 100 };
 *   const origin = centredOrigin(extent, 10, { left: 0, top: 0, right: 100, bottom: 50 });
 *   expect(origin).toEqual({ x: 40, y: 20 });
 */
export function centredOrigin(extent: Box, denominator: number, box: Box): Spot {
  return {
    x: (box.left + box.right) / 2 - (extent.left + extent.right) / 2 / denominator,
    y: (box.top + box.bottom) / 2 - (extent.top + extent.bottom) / 2 / denominator,
  };
}

function drawShape(shape: Shape, onPaper: OnPaper): Drawn[] {
  const at = (spot: Spot) => paperSpot(onPaper, spot);
  const part = shape.part === undefined ? {} : { part: shape.part };
  const { role } = shape;
  switch (shape.kind) {
    case "line":
      return [{ kind: "strokes", role, strokes: [[at(shape.from), at(shape.to)]], ...part }];
    case "outline":
      return drawOutline({ ...shape, spots: shape.spots.map(at) });
    case "circle": {
      const fill: FlatFill = shape.fill === "hatch" ? "tint" : shape.fill;
      const radius = shape.radius / onPaper.denominator;
      return [{ kind: "circle", role, centre: at(shape.centre), radius, fill, ...part }];
    }
    case "arc": {
      const { fromAngle, toAngle } = shape;
      const radius = shape.radius / onPaper.denominator;
      return [{ kind: "arc", role, centre: at(shape.centre), radius, fromAngle, toAngle, ...part }];
    }
    case "mark":
      return drawMark({ ...shape, at: at(shape.at) }, onPaper.denominator > smallScale ? 0.6 : 1);
    case "text":
      return drawText(shape, onPaper);
    case "dimension":
      return drawDimension({ ...shape, from: at(shape.from), to: at(shape.to), base: at(shape.base) });
  }
}

/** `spots` on paper already. */
function drawOutline({ role, part, spots, closed, fill }: OutlineShape): Drawn[] {
  const named = part === undefined ? {} : { part };
  const edge: Drawn = {
    kind: "path",
    role,
    spots,
    closed,
    fill: fill === "hatch" ? "none" : fill,
    stroked: true,
    ...named,
  };
  if (fill !== "hatch") return [edge];
  return [
    { kind: "path", role, spots, closed, fill: "paper", stroked: false, ...named },
    { kind: "strokes", role: "hatch", strokes: hatchStrokes(spots, hatchSpacing) },
    edge,
  ];
}

function drawMark({ role, part, mark, at }: MarkShape, size: number): Drawn[] {
  const named = part === undefined ? {} : { part };
  const reach = (mark === "cross" ? centreLineReach + 1 : centreLineReach) * size;
  const cross: DrawnStrokes = {
    kind: "strokes",
    role,
    strokes: [
      [
        { x: at.x - reach, y: at.y },
        { x: at.x + reach, y: at.y },
      ],
      [
        { x: at.x, y: at.y - reach },
        { x: at.x, y: at.y + reach },
      ],
    ],
    ...named,
  };
  if (mark === "cross") return [cross];
  const radius = (mark === "pin" ? pinRadius : hingeRadius) * size;
  const ring: Drawn = { kind: "circle", role, centre: at, radius, fill: "paper", ...named };
  if (mark === "pin") return [ring, { ...cross, role: "leader" }];
  return [ring, { kind: "circle", role, centre: at, radius: radius / 2, fill: "solid", ...named }];
}

function drawText(shape: TextShape, onPaper: OnPaper): Drawn[] {
  const { role, text, size, anchor, turn, shift } = shape;
  const named = shape.part === undefined ? {} : { part: shape.part };
  const patch = patchInside(shape, onPaper);
  if (patch !== null) {
    const at = { x: (patch.left + patch.right) / 2, y: patch.bottom - size * 0.55 };
    return [
      { kind: "path", role, spots: corners(patch), closed: true, fill: "paper", stroked: false },
      { kind: "text", role, at, text, size, anchor: "middle", turn: 0, bold: false, ...named },
    ];
  }
  const spot = paperSpot(onPaper, shape.at);
  const cos = Math.cos(turn);
  const sin = Math.sin(turn);
  const at = { x: spot.x + shift.x * cos - shift.y * sin, y: spot.y + shift.x * sin + shift.y * cos };
  return [{ kind: "text", role, at, text, size, anchor, turn, bold: false, ...named }];
}

/** The patch for a text that fits into its body at this scale [paper mm]. */
function patchInside({ inside, text, size }: TextShape, onPaper: OnPaper): Box | null {
  if (inside === undefined) return null;
  const from = paperSpot(onPaper, { x: inside.left, y: inside.top });
  const to = paperSpot(onPaper, { x: inside.right, y: inside.bottom });
  const width = roughTextWidth(text, size) + size;
  const height = size * 1.6;
  if (width > to.x - from.x - 2 || height > to.y - from.y - 2) return null;
  const x = (from.x + to.x) / 2;
  const y = (from.y + to.y) / 2;
  return { left: x - width / 2, top: y - height / 2, right: x + width / 2, bottom: y + height / 2 };
}

const corners = ({ left, top, right, bottom }: Box): Spot[] => [
  { x: left, y: top },
  { x: right, y: top },
  { x: right, y: bottom },
  { x: left, y: bottom },
];
