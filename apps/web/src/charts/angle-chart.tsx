import { type KeyboardEvent, type PointerEvent, useRef } from "react";
import { pathData } from "../drawing/marks.tsx";
import { usePaperSize } from "../drawing/use-paper.ts";
import type { Bench } from "../stages/placement/bench.ts";
import { shown } from "../stages/placement/shown.ts";
import { text } from "../strings/text.ts";
import { type Curve, type Frame, pieces, scales, valueAt } from "./curve.ts";

const height = 128;

/** One curve over the leaf's angle. Its line is moved to swing the leaf; all charts share that line. */
export function AngleChart({
  curve,
  bench,
  summary,
}: {
  readonly curve: Curve;
  readonly bench: Bench;
  readonly summary: string;
}) {
  const { theta, openAngle, display, setTheta } = bench;
  const box = useRef<HTMLDivElement>(null);
  const size = usePaperSize(box);
  const width = size?.width ?? 260;
  const frame: Frame = { left: 6, right: width - 6, top: 8, bottom: height - 22 };
  const { x, y, angleAt } = scales(curve, frame);
  const value = valueAt(curve, theta);
  const amount = (si: number) => shown(si, curve.what, display);
  const angle = (radians: number) => shown(radians, "angle", display);
  const swingTo = (event: PointerEvent<SVGSVGElement>) => {
    const box = event.currentTarget.getBoundingClientRect();
    const to = Math.min(Math.max(angleAt(event.clientX - box.left), 0), openAngle);
    setTheta((Math.round(((to * 180) / Math.PI) * 2) / 2) * (Math.PI / 180));
  };
  const onKeyDown = (event: KeyboardEvent) => {
    const by = { ArrowLeft: -1, ArrowDown: -1, ArrowRight: 1, ArrowUp: 1, PageDown: -10, PageUp: 10 }[
      event.key
    ];
    const to =
      event.key === "Home" ? 0 : event.key === "End" ? openAngle : theta + ((by ?? 0) * Math.PI) / 180;
    if (by === undefined && event.key !== "Home" && event.key !== "End") return;
    event.preventDefault();
    setTheta(Math.min(Math.max(to, 0), openAngle));
  };
  const ticks = [0, 30, 60, 90, 120, 150].filter((tick) => (tick * Math.PI) / 180 < openAngle - 0.2);
  return (
    <figure className="chart">
      <figcaption>
        <span>{curve.name}</span>
        <b>{value === null ? "–" : amount(value)}</b>
      </figcaption>
      <div ref={box}>
        <svg
          width={width}
          height={height}
          // biome-ignore lint/a11y/noNoninteractiveElementToInteractiveRole: the chart is what is moved along
          role="slider"
          tabIndex={0}
          aria-label={`${text("charts.angle")}. ${summary}`}
          aria-valuemin={0}
          aria-valuemax={Math.round((openAngle * 180) / Math.PI)}
          aria-valuenow={Math.round((theta * 180) / Math.PI)}
          aria-valuetext={text("charts.here", {
            name: curve.name,
            value: value === null ? "–" : amount(value),
            angle: angle(theta),
          })}
          onPointerDown={(event) => {
            event.currentTarget.setPointerCapture(event.pointerId);
            swingTo(event);
          }}
          onPointerMove={(event) => event.buttons === 1 && swingTo(event)}
          onKeyDown={onKeyDown}
        >
          <path className="axis" d={`M${frame.left} ${frame.top}V${frame.bottom}H${frame.right}`} />
          {[...ticks, (openAngle * 180) / Math.PI].map((tick) => (
            <g key={tick}>
              <line
                className="tick"
                x1={x((tick * Math.PI) / 180)}
                x2={x((tick * Math.PI) / 180)}
                y1={frame.bottom}
                y2={frame.bottom + 4}
              />
              <text
                className="tick-label"
                x={x((tick * Math.PI) / 180)}
                y={height - 4}
                textAnchor={
                  tick === 0 ? "start" : x((tick * Math.PI) / 180) > frame.right - 12 ? "end" : "middle"
                }
              >
                {angle((tick * Math.PI) / 180)}
              </text>
            </g>
          ))}
          {curve.limit !== null && curve.limit > 0 && (
            <>
              <line
                className="bound"
                x1={frame.left}
                x2={frame.right}
                y1={y(curve.limit)}
                y2={y(curve.limit)}
              />
              <text className="bound-label" x={frame.right} y={y(curve.limit) + 13} textAnchor="end">
                {text("charts.limit", { value: amount(curve.limit) })}
              </text>
            </>
          )}
          {pieces(curve, frame).map((piece) => (
            <path key={piece[0]?.x} className="curve" d={pathData(piece, false)} />
          ))}
          <line className="cursor" x1={x(theta)} x2={x(theta)} y1={frame.top - 6} y2={frame.bottom} />
          {value !== null && <circle className="cursor-dot" cx={x(theta)} cy={y(value)} r="4.5" />}
        </svg>
      </div>
    </figure>
  );
}
