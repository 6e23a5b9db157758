import { leverArm } from "@pintle/core";
import { type Job, toTravel } from "@pintle/job";
import type { Bench } from "../stages/placement/bench.ts";
import { shown } from "../stages/placement/shown.ts";
import { text } from "../strings/text.ts";
import {
  boxOutlines,
  leverFoot,
  onPlan,
  panelOutline,
  pathOf,
  type RamShape,
  turnOf,
} from "./gate-shapes.ts";
import { Note, PinMark, pathData, readableTurn } from "./marks.tsx";
import type { Projection, Spot } from "./projection.ts";

/** The leaf: closed and open as ghosts, the way of its toe, and where it stands now. */
export function LeafDrawing({ bench, on }: { readonly bench: Bench; readonly on: Projection }) {
  const { leaf, theta, openAngle } = bench;
  const outline = (angle: number) => pathData(panelOutline(leaf, angle).map(on.toScreen));
  const toe = pathOf(leaf, leaf.lengthMm, leaf.faceMm - leaf.thicknessMm / 2, openAngle);
  return (
    <g className="leaf">
      <path className="ghost" d={outline(0)} />
      <path className="ghost" d={outline(openAngle)} />
      <path className="sweep" d={pathData(toe.map(on.toScreen), false)} />
      {[...boxOutlines(leaf, theta)].map((box, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: boxes are told apart by their place in the list
        <path key={index} className="leaf-body" d={pathData(box.map(on.toScreen))} />
      ))}
      <path className="leaf-body" d={outline(theta)} />
    </g>
  );
}

/** The other leaf of a pair, thin, where it stands when both have done the same share of their travel. */
export function OtherLeaves({ bench, on }: { readonly bench: Bench; readonly on: Projection }) {
  const { job, leafIndex, leaf, theta, openAngle } = bench;
  const between = job.gateway?.betweenHingesMm;
  if (between === undefined || job.leaves.length !== 2) return null;
  const other = job.leaves[1 - leafIndex] as Job["leaves"][number];
  if (other.hingeSide === leaf.hingeSide) return null;
  const share = openAngle > 0 ? theta / openAngle : 0;
  const mirrored = ({ x, y }: Spot) => on.toScreen({ x: between - x, y });
  const outline = (angle: number) => pathData(panelOutline(other, angle).map(mirrored));
  const angle = (share * (other.openAngleDeg * Math.PI)) / 180;
  return (
    <g className="other-leaf">
      {(other.fixed ?? []).map((thing) => (
        <path
          key={thing.name}
          className="line-thin"
          d={pathData(thing.outlineMm.map(([x, y]) => mirrored({ x, y })))}
          fill="url(#hatch)"
        />
      ))}
      <path className="ghost" d={outline(0)} />
      <path className="line-thin" d={outline(angle)} fill="none" />
    </g>
  );
}

/** The ram between its pins, with the line of thrust. */
export function RamDrawing({ shape, on }: { readonly shape: RamShape; readonly on: Projection }) {
  const [p, q] = [on.toScreen(shape.postPin), on.toScreen(shape.leafPin)];
  return (
    <g className="ram">
      <path className="ram-body" d={pathData(shape.rod.map(on.toScreen))} />
      {shape.tube.map((part, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: stretches are told apart by their place in the list
        <path key={index} className="ram-body" d={pathData(part.map(on.toScreen))} />
      ))}
      <line className="centre-line" x1={p.x} y1={p.y} x2={q.x} y2={q.y} />
    </g>
  );
}

/** The bracket arm from the leaf's face to its pin, so that the pin does not float. */
export function BracketArms({ bench, on }: { readonly bench: Bench; readonly on: Projection }) {
  const { leaf, theta } = bench;
  if (leaf.placement === undefined) return null;
  const { alongMm, offMm } = leaf.placement.leafPin;
  const phi = turnOf(leaf, theta);
  const foot = on.toScreen(
    onPlan(alongMm, offMm > leaf.faceMm ? leaf.faceMm : leaf.faceMm - leaf.thicknessMm, phi),
  );
  const pin = on.toScreen(onPlan(alongMm, offMm, phi));
  return <line className="line-thick" x1={foot.x} y1={foot.y} x2={pin.x} y2={pin.y} />;
}

/** Hinge axis and the lever arm: the square from the axis to the line of thrust. */
export function LeverDrawing(props: {
  readonly bench: Bench;
  readonly shape: RamShape;
  readonly on: Projection;
}) {
  const { bench, shape, on } = props;
  const { gate, leaf, theta, display } = bench;
  const [hinge, foot] = [on.toScreen({ x: 0, y: 0 }), on.toScreen(leverFoot(shape))];
  const length = Math.hypot(foot.x - hinge.x, foot.y - hinge.y);
  const turn = readableTurn(foot.x - hinge.x, foot.y - hinge.y);
  const up = { x: Math.sin((turn * Math.PI) / 180), y: -Math.cos((turn * Math.PI) / 180) };
  const middle = {
    x: hinge.x * 0.45 + foot.x * 0.55 + up.x * 4,
    y: hinge.y * 0.45 + foot.y * 0.55 + up.y * 4,
  };
  const lever = gate === null ? null : leverArm(gate.placement, toTravel(leaf), theta);
  return (
    <g className="lever">
      <line className="lever-line" x1={hinge.x} y1={hinge.y} x2={foot.x} y2={foot.y} />
      {lever !== null && length > 104 && (
        <Note at={middle} turn={turn} className="moving">
          {text("drawn.lever", { value: shown(lever, "length", display).replace(/ mm$/, "") })}
        </Note>
      )}
    </g>
  );
}

/** The hinge axis. */
export function HingeMark({ on }: { readonly on: Projection }) {
  const hinge = on.toScreen({ x: 0, y: 0 });
  return (
    <g className="hinge" transform={`translate(${hinge.x} ${hinge.y})`}>
      <circle r="7" />
      <circle className="solid" r="3" />
    </g>
  );
}

/** The two pins. */
export function Pins({ shape, on }: { readonly shape: RamShape; readonly on: Projection }) {
  return (
    <>
      <PinMark at={on.toScreen(shape.postPin)} radius={7} />
      <PinMark at={on.toScreen(shape.leafPin)} radius={7} />
    </>
  );
}
