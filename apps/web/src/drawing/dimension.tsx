import { Note, readableTurn } from "./marks.tsx";
import type { Projection, Spot } from "./projection.ts";

/** What a dimension says and what happens when it is pressed. */
export interface Dimension {
  readonly id: string;
  /** The two plan points that it measures between [mm]. */
  readonly from: Spot;
  readonly to: Spot;
  /** Unit vector of the measuring direction on the plan. */
  readonly along: Spot;
  /** A plan point that the dimension line passes through [mm]. */
  readonly through: Spot;
  readonly label: string;
  readonly name: string;
  /** Where the writing stands: on the line, or beyond its second end when the line is short. */
  readonly moving?: boolean;
}

const arrow = 9;
const arrowHalf = 2.4;

function Arrow({ at, ux, uy }: { readonly at: Spot; readonly ux: number; readonly uy: number }) {
  const [bx, by] = [at.x + ux * arrow, at.y + uy * arrow];
  const corners = [
    [at.x, at.y],
    [bx - uy * arrowHalf, by + ux * arrowHalf],
    [bx + uy * arrowHalf, by - ux * arrowHalf],
  ];
  return <polygon className="arrow" points={corners.map((corner) => corner.join(",")).join(" ")} />;
}

/** A linear dimension as ISO 129-1 draws it, its number a button that opens a box to type in. */
export function DimensionLine(props: {
  readonly dimension: Dimension;
  readonly on: Projection;
  readonly press: (dimension: Dimension, at: Spot) => void;
  readonly pressName: string;
}) {
  const { dimension, on, press, pressName } = props;
  const { from, to, along, through } = dimension;
  const normal = { x: -along.y, y: along.x };
  const footOf = (spot: Spot): Spot => {
    const away = (through.x - spot.x) * normal.x + (through.y - spot.y) * normal.y;
    return { x: spot.x + away * normal.x, y: spot.y + away * normal.y };
  };
  const [a, b] = [on.toScreen(footOf(from)), on.toScreen(footOf(to))];
  const length = Math.hypot(b.x - a.x, b.y - a.y);
  const direction = on.toScreen({
    x: along.x + on.toPlan({ x: 0, y: 0 }).x,
    y: along.y + on.toPlan({ x: 0, y: 0 }).y,
  });
  const [ux, uy] =
    length > 0.5
      ? [(b.x - a.x) / length, (b.y - a.y) / length]
      : [
          direction.x / (Math.hypot(direction.x, direction.y) || 1),
          direction.y / (Math.hypot(direction.x, direction.y) || 1),
        ];
  const turn = readableTurn(ux, uy);
  const up = { x: Math.sin((turn * Math.PI) / 180), y: -Math.cos((turn * Math.PI) / 180) };
  const wide = dimension.label.length * 7.6;
  const outside = length < wide + 8;
  const tight = length < 3 * arrow;
  const middle = outside
    ? { x: b.x + ux * (wide / 2 + (tight ? 16 : 8)), y: b.y + uy * (wide / 2 + (tight ? 16 : 8)) }
    : { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 };
  const lift = outside && !tight ? 0 : 5;
  const writing = { x: middle.x + up.x * lift, y: middle.y + up.y * lift };
  const tail = tight ? 16 : 0;
  const beyond = outside ? wide + (tight ? 20 : 6) : 0;
  const size = 44;
  return (
    <g className={`dimension${dimension.moving ? " moving" : ""}`}>
      <Extension from={on.toScreen(from)} to={a} />
      <Extension from={on.toScreen(to)} to={b} />
      <line
        x1={a.x - ux * tail}
        y1={a.y - uy * tail}
        x2={b.x + ux * (tight ? beyond : 0)}
        y2={b.y + uy * (tight ? beyond : 0)}
      />
      <Arrow at={a} ux={tight ? -ux : ux} uy={tight ? -uy : uy} />
      <Arrow at={b} ux={tight ? ux : -ux} uy={tight ? uy : -uy} />
      {/* biome-ignore lint/a11y/useSemanticElements: a button inside a drawing cannot be an HTML button */}
      <g
        className="press"
        role="button"
        tabIndex={0}
        aria-label={pressName}
        data-dimension={dimension.id}
        onClick={() => press(dimension, writing)}
        onKeyDown={(event) => {
          if (event.key !== "Enter" && event.key !== " ") return;
          event.preventDefault();
          press(dimension, writing);
        }}
        onPointerDown={(event) => event.stopPropagation()}
      >
        <rect
          className="target"
          x={-Math.max(size, wide) / 2}
          y={-size / 2 - 5}
          width={Math.max(size, wide)}
          height={size}
          transform={`translate(${writing.x} ${writing.y}) rotate(${turn})`}
        />
        <Note at={writing} turn={turn} className="number">
          {dimension.label}
        </Note>
      </g>
    </g>
  );
}

/** From just off the thing measured to just past the dimension line. */
function Extension({ from, to }: { readonly from: Spot; readonly to: Spot }) {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  if (length < 6) return null;
  const [ux, uy] = [(to.x - from.x) / length, (to.y - from.y) / length];
  return <line x1={from.x + ux * 4} y1={from.y + uy * 4} x2={to.x + ux * 5} y2={to.y + uy * 5} />;
}
