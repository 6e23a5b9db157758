import type { ReactNode } from "react";
import type { Spot } from "./projection.ts";

/** An outline as the `d` of an SVG path. */
export function pathData(spots: readonly Spot[], closed = true): string {
  const steps = spots.map(({ x, y }, i) => `${i === 0 ? "M" : "L"}${x.toFixed(2)} ${y.toFixed(2)}`);
  return `${steps.join("")}${closed ? "Z" : ""}`;
}

/** The hatch of what stands still: 45° lines, at a spacing that does not change with the zoom. */
export function HatchPattern() {
  return (
    <pattern id="hatch" width="7" height="7" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
      <line className="line-thin" x1="0" y1="0" x2="0" y2="7" />
    </pattern>
  );
}

/** A pin seen from above: a circle with its two centre lines. */
export function PinMark({ at, radius }: { readonly at: Spot; readonly radius: number }) {
  const reach = radius + 5;
  return (
    <g className="pin" transform={`translate(${at.x} ${at.y})`}>
      <circle r={radius} />
      <line x1={-reach} x2={reach} y1="0" y2="0" />
      <line y1={-reach} y2={reach} x1="0" x2="0" />
    </g>
  );
}

/** Writing on the drawing, with a rim of paper round it so that lines do not run through it. */
export function Note(props: {
  readonly at: Spot;
  readonly turn?: number;
  readonly anchor?: "start" | "middle" | "end";
  readonly className?: string;
  readonly children: ReactNode;
}) {
  const { at, turn = 0, anchor = "middle", className = "", children } = props;
  return (
    <text
      className={`note ${className}`}
      textAnchor={anchor}
      transform={`translate(${at.x.toFixed(2)} ${at.y.toFixed(2)}) rotate(${turn.toFixed(2)})`}
    >
      {children}
    </text>
  );
}

/** Turn of writing along a screen direction [deg], so that it reads from the bottom or the right (ISO 129-1). */
export function readableTurn(dx: number, dy: number): number {
  const turn = (Math.atan2(dy, dx) * 180) / Math.PI;
  if (turn > 90.001) return turn - 180;
  return turn <= -90.001 ? turn + 180 : turn >= 89.999 ? -90 : turn;
}
