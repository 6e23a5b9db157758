import { estimateAsBuilt, type PinSpread } from "@pintle/core";
import { fromSi, toLeaf, toPlacement, toPostFaces, toReadings } from "@pintle/job";
import { useMemo } from "react";
import type { Bench } from "../stages/placement/bench.ts";
import { text } from "../strings/text.ts";
import { onPlan, turnOf } from "./gate-shapes.ts";
import { Note, pathData } from "./marks.tsx";
import type { Projection, Spot } from "./projection.ts";

/** Errors of a tape are a few millimetres: at the scale of a gate they are drawn this many times as large. */
const enlarged = 10;

/** The pins as measured, with the ellipse of one standard error round each, enlarged and saying so. */
export function BuiltLayer({ bench, on }: { readonly bench: Bench; readonly on: Projection }) {
  const { leaf, theta } = bench;
  const estimate = useMemo(() => {
    const plan = toPlacement(leaf.placement);
    const readings = toReadings(leaf);
    if (plan === null || readings.length === 0) return null;
    const outcome = estimateAsBuilt({
      leaf: toLeaf(leaf),
      postFaces: toPostFaces(leaf),
      plan,
      readings,
      estimateOpenAngle: leaf.asBuilt?.estimateOpenAngle ?? false,
    });
    return outcome.ok ? outcome.value : null;
  }, [leaf]);
  if (estimate === null) return null;
  const { postPin, leafPin } = estimate.placement;
  const phi = turnOf(leaf, theta);
  const mm = (metres: number) => fromSi(metres, "mm");
  const post: Spot = { x: mm(postPin.along), y: mm(postPin.out) };
  const onLeaf = onPlan(mm(leafPin.along), mm(leafPin.off), phi);
  return (
    <g className="built">
      <path d={pathData(ellipse(estimate.postPinSpread, post, 0).map(on.toScreen))} />
      <path d={pathData(ellipse(estimate.leafPinSpread, onLeaf, phi).map(on.toScreen))} />
      {[post, onLeaf].map(on.toScreen).map(({ x, y }) => (
        <path
          key={`${x} ${y}`}
          className="built-cross"
          d={`M${x - 9} ${y}H${x + 9}M${x} ${y - 9}V${y + 9}`}
        />
      ))}
      <Note at={{ x: on.width / 2, y: on.height - 76 }}>{text("built.drawn", { times: enlarged })}</Note>
    </g>
  );
}

/** The ellipse of a spread round a plan point [mm]; `turn` is that of the axes which the spread is given in. */
function ellipse({ ellipse: { major, minor, direction } }: PinSpread, centre: Spot, turn: number): Spot[] {
  const [a, b] = [fromSi(major, "mm") * enlarged, fromSi(minor, "mm") * enlarged];
  const [cos, sin] = [Math.cos(direction + turn), Math.sin(direction + turn)];
  return Array.from({ length: 48 }, (_, i) => {
    const angle = (i * Math.PI) / 24;
    const [s, t] = [a * Math.cos(angle), b * Math.sin(angle)];
    return { x: centre.x + s * cos - t * sin, y: centre.y + s * sin + t * cos };
  });
}
