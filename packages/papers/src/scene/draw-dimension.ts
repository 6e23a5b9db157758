import type { Drawn } from "./drawn.ts";
import type { DimensionShape, Spot } from "./scene.ts";
import { roughTextWidth } from "./text-width.ts";

// Sizes on paper [mm], as a drawing office has them: arrow about 10 line widths long and 1 : 3 in shape, the
// extension line a little short of the body and a little past the dimension line, the text clear above it.
const arrowLength = 2.5;
const arrowHalfWidth = 0.42;
const gapAtBody = 1;
const pastLine = 1.5;
const textGap = 0.9;
const outside = 4;

/** Letter size of dimension figures on paper [mm]; its capitals are about 2.5 mm high. */
const dimensionTextSize = 3.4;

const add = (spot: Spot, direction: Spot, by: number): Spot => ({
  x: spot.x + direction.x * by,
  y: spot.y + direction.y * by,
});

/**
 * A dimension as strokes, arrows and text in paper millimetres. `from`, `to` and `base` are on paper already.
 *
 * Where the text does not fit between the arrows they point inward from outside, and the text goes above the
 * line that is drawn on past the arrow at `to`. The text reads from the foot or from the right of the page.
 */
export function drawDimension(shape: DimensionShape): Drawn[] {
  const along = { x: Math.cos(shape.direction), y: Math.sin(shape.direction) };
  const across = { x: -along.y, y: along.x };
  const onLine = (spot: Spot): Spot => {
    const onBase = add(shape.base, across, shape.away);
    const by = (spot.x - onBase.x) * along.x + (spot.y - onBase.y) * along.y;
    return add(onBase, along, by);
  };
  const ends: readonly [Spot, Spot] = [onLine(shape.from), onLine(shape.to)];
  const length = (ends[1].x - ends[0].x) * along.x + (ends[1].y - ends[0].y) * along.y;
  const way = length < 0 ? { x: -along.x, y: -along.y } : along;
  const width = roughTextWidth(shape.text, dimensionTextSize);
  const isNarrow = Math.abs(length) < width + 2 * arrowLength + 1;
  const part = shape.part === undefined ? {} : { part: shape.part };
  const strokes: [Spot, Spot][] = [
    ...extension(shape.from, ends[0]),
    ...extension(shape.to, ends[1]),
    isNarrow
      ? [add(ends[0], way, -outside - arrowLength), add(ends[1], way, outside + arrowLength + width)]
      : [ends[0], ends[1]],
  ];
  const turn = readable(Math.atan2(way.y, way.x));
  const up = { x: Math.sin(turn), y: -Math.cos(turn) };
  const middle = isNarrow
    ? add(ends[1], way, outside + arrowLength + width / 2)
    : { x: (ends[0].x + ends[1].x) / 2, y: (ends[0].y + ends[1].y) / 2 };
  const inward = isNarrow ? -1 : 1;
  return [
    { kind: "strokes", role: shape.role, strokes, ...part },
    arrow(shape, ends[0], { x: way.x * inward, y: way.y * inward }),
    arrow(shape, ends[1], { x: -way.x * inward, y: -way.y * inward }),
    {
      kind: "text",
      role: shape.role,
      at: add(middle, up, textGap),
      text: shape.text,
      size: dimensionTextSize,
      anchor: "middle",
      turn,
      bold: false,
      ...part,
    },
  ];
}

function extension(body: Spot, end: Spot): [Spot, Spot][] {
  const dx = end.x - body.x;
  const dy = end.y - body.y;
  const length = Math.hypot(dx, dy);
  if (length <= gapAtBody) return [];
  const way = { x: dx / length, y: dy / length };
  return [[add(body, way, gapAtBody), add(end, way, pastLine)]];
}

/** A filled arrow head with its tip at `tip`, the shaft running off along `way`. */
function arrow(shape: DimensionShape, tip: Spot, way: Spot): Drawn {
  const foot = add(tip, way, arrowLength);
  const side = { x: -way.y, y: way.x };
  return {
    kind: "path",
    role: shape.role,
    spots: [tip, add(foot, side, arrowHalfWidth), add(foot, side, -arrowHalfWidth)],
    closed: true,
    fill: "solid",
    stroked: false,
  };
}

/** The direction, or its opposite, in which letters stand upright or lean with their feet to the right. */
function readable(angle: number): number {
  const turn = Math.atan2(Math.sin(angle), Math.cos(angle));
  if (turn > Math.PI / 2 - 1e-9) return turn - Math.PI;
  return turn < -Math.PI / 2 - 1e-9 ? turn + Math.PI : turn;
}
