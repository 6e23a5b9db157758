import { judgeDocument } from "@pintle/job";
import type { PointerEvent } from "react";
import { type Change, changed } from "../jobs/change.ts";
import { withTypedOrigin } from "../jobs/typed-origin.ts";
import type { Bench, Held } from "../stages/placement/bench.ts";
import { onTape, shownDeg, shownMm } from "../stages/placement/shown.ts";
import { text } from "../strings/text.ts";
import { inLeafAxes, onPlan, turnOf } from "./gate-shapes.ts";
import { Handle } from "./handle.tsx";
import type { Projection, Spot } from "./projection.ts";

/** Length of one press of an arrow key, and with Shift [mm]. */
const press = { metric: [1, 10], us: [25.4 / 16, 25.4 / 2] } as const;

/** Everything on the drawing that can be taken hold of, the pins on top. */
export function Handles(props: {
  readonly bench: Bench;
  readonly on: Projection;
  readonly toSheet: (event: PointerEvent) => Spot;
}) {
  const { bench, on, toSheet } = props;
  const { leaf, leafIndex, display, theta, openAngle, job } = bench;
  const pins = leaf.placement;
  const phi = turnOf(leaf, theta);
  const tape = (mm: number) => onTape(mm, display);
  const size = (coarse: boolean) => press[display][coarse ? 1 : 0];
  const setPair = (path: Change["path"], pair: Readonly<Record<string, number>>): Change[] =>
    Object.entries(pair).map(([key, value]) => ({ path: ["leaves", leafIndex, ...path, key], value }));

  const common = (held: Held) => ({
    on,
    toSheet,
    roleText: text("handle.moves"),
    role: "button" as const,
    start: () => bench.hold(held),
    end: (kept: boolean) => (kept ? bench.keepDrag() : bench.dropDrag()),
  });

  const corners = (leaf.fixed ?? []).flatMap((thing, thingIndex) =>
    thing.outlineMm.map(([x, y], cornerIndex) => {
      const at = (axis: number): Change["path"] => [
        "leaves",
        leafIndex,
        "fixed",
        thingIndex,
        "outlineMm",
        cornerIndex,
        axis,
      ];
      // An outline that crosses itself is no outline: the corner stays where it last made one.
      const moved = (spot: Spot): Change[] | null => {
        const changes = [
          { path: at(0), value: tape(spot.x) },
          { path: at(1), value: tape(spot.y) },
        ];
        return judgeDocument(changed(job, changes)).ok ? withTypedOrigin(changes) : null;
      };
      return (
        <Handle
          // biome-ignore lint/suspicious/noArrayIndexKey: a corner is its place in the outline
          key={`${thingIndex} ${cornerIndex}`}
          {...common({ kind: "corner", thing: thingIndex, corner: cornerIndex })}
          id={`corner-${thingIndex}-${cornerIndex}`}
          at={{ x, y }}
          mark="square"
          label={text("handle.corner", {
            number: cornerIndex + 1,
            thing: thing.name,
            along: shownMm(x, display),
            out: shownMm(y, display),
          })}
          move={(spot) => {
            const changes = moved(spot);
            if (changes !== null) bench.drag(changes, text("edit.corner", { thing: thing.name }));
          }}
          step={(way, coarse) => {
            const changes = moved({ x: x + way.x * size(coarse), y: y + way.y * size(coarse) });
            if (changes !== null) bench.change(changes, text("edit.corner", { thing: thing.name }), "corner");
          }}
        />
      );
    }),
  );

  const grip = onPlan(gripAlong(bench, on), leaf.faceMm - leaf.thicknessMm / 2, phi);
  const degrees = (theta * 180) / Math.PI;
  const setDegrees = (next: number) =>
    bench.setTheta((Math.min(Math.max(next, 0), leaf.openAngleDeg) * Math.PI) / 180);
  return (
    <g className="handles">
      {corners}
      <Handle
        {...common({ kind: "leaf" })}
        id="leaf"
        role="slider"
        at={grip}
        mark="grip"
        label={text("handle.leaf")}
        values={{ now: Math.round(degrees * 10) / 10, most: leaf.openAngleDeg, words: shownDeg(degrees) }}
        move={(spot) => {
          const turned = Math.atan2(spot.y, spot.x) * (leaf.swing === "toward" ? 1 : -1);
          // Just behind the closed line the leaf stays closed instead of jumping open.
          const angle = turned < -Math.PI / 2 ? openAngle : turned;
          setDegrees(Math.round(((angle * 180) / Math.PI) * 2) / 2);
        }}
        end={() => {}}
        step={(way, coarse) => {
          const opens = leaf.swing === "toward" ? 1 : -1;
          const towardOpen = way.x !== 0 ? -way.x : way.y * opens;
          setDegrees(degrees + towardOpen * (coarse ? 10 : 1));
        }}
      />
      {pins !== undefined && (
        <>
          <Handle
            {...common({ kind: "leafPin" })}
            id="leafPin"
            at={onPlan(pins.leafPin.alongMm, pins.leafPin.offMm, phi)}
            mark="ring"
            label={text("handle.leafPin", {
              along: shownMm(pins.leafPin.alongMm, display),
              off: shownMm(pins.leafPin.offMm, display),
            })}
            move={(spot) => {
              const { along, off } = inLeafAxes(spot, phi);
              bench.drag(
                setPair(["placement", "leafPin"], { alongMm: tape(along), offMm: tape(off) }),
                text("edit.leafPin"),
              );
            }}
            step={(way, coarse) => {
              const { along, off } = inLeafAxes(way, phi);
              // One press moves along the axis of the leaf that lies nearest to the key's direction.
              const isAlong = Math.abs(along) >= Math.abs(off);
              const by = size(coarse) * Math.sign(isAlong ? along : off);
              const key = isAlong ? "alongMm" : "offMm";
              bench.change(
                setPair(["placement", "leafPin"], { [key]: tape(pins.leafPin[key] + by) }),
                text("edit.leafPin"),
                "leafPin",
              );
            }}
          />
          <Handle
            {...common({ kind: "postPin" })}
            id="postPin"
            at={{ x: pins.postPin.alongMm, y: pins.postPin.outMm }}
            mark="ring"
            label={text("handle.postPin", {
              along: shownMm(pins.postPin.alongMm, display),
              out: shownMm(pins.postPin.outMm, display),
            })}
            move={(spot) =>
              bench.drag(
                setPair(["placement", "postPin"], { alongMm: tape(spot.x), outMm: tape(spot.y) }),
                text("edit.postPin"),
              )
            }
            step={(way, coarse) => {
              const key = way.x !== 0 ? "alongMm" : "outMm";
              const by = size(coarse) * (way.x !== 0 ? way.x : way.y);
              bench.change(
                setPair(["placement", "postPin"], { [key]: tape(pins.postPin[key] + by) }),
                text("edit.postPin"),
                "postPin",
              );
            }}
          />
        </>
      )}
    </g>
  );
}

/** Where along the leaf it is taken hold of: beyond the leaf pin, but in sight. */
function gripAlong({ leaf }: Bench, on: Projection): number {
  const pin = leaf.placement?.leafPin.alongMm ?? leaf.lengthMm * 0.4;
  return Math.min(pin + Math.max(110, 70 / on.scale), leaf.lengthMm * 0.97);
}
