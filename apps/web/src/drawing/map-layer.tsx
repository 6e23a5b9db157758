import type { ReserveMap } from "@pintle/core";
import { useMemo, useState } from "react";
import type { Bench } from "../stages/placement/bench.ts";
import { onDimension, shownMm } from "../stages/placement/shown.ts";
import { text } from "../strings/text.ts";
import { onPlan, turnOf } from "./gate-shapes.ts";
import { type MapCell, nearestCell } from "./map-cell.ts";
import { Note, PinMark, pathData } from "./marks.tsx";
import type { Projection, Spot } from "./projection.ts";
import { reserveContours } from "./reserve-contours.ts";

/** The reserve map on the post: contours of what can be had, and the best leaf pin for the place pointed at. */
export function MapLayer(props: {
  readonly map: ReserveMap;
  readonly bench: Bench;
  readonly on: Projection;
  readonly take: (cell: MapCell) => void;
}) {
  const { map, bench, on } = props;
  const { display, leaf, theta } = bench;
  const [pointed, setPointed] = useState<MapCell | null>(null);
  const contours = useMemo(() => reserveContours(map, display), [map, display]);
  const corner = (x: number | undefined, y: number | undefined) =>
    on.toScreen({ x: (x ?? 0) * 1000, y: (y ?? 0) * 1000 });
  const [a, b] = [corner(map.along[0], map.out[0]), corner(map.along.at(-1), map.out.at(-1))];
  const box = {
    x: Math.min(a.x, b.x),
    y: Math.min(a.y, b.y),
    width: Math.abs(a.x - b.x),
    height: Math.abs(a.y - b.y),
  };
  const cellAt = (event: { currentTarget: Element; clientX: number; clientY: number }) => {
    const sheet = event.currentTarget.closest("svg")?.getBoundingClientRect();
    return nearestCell(
      map,
      on.toPlan({ x: event.clientX - (sheet?.left ?? 0), y: event.clientY - (sheet?.top ?? 0) }),
    );
  };
  const pin = pointed?.leafPin ?? null;
  return (
    <g className="reserve-map">
      {contours.map(({ reserveMm, rings }, index) => (
        <path
          key={reserveMm}
          className="map-band"
          style={{ fillOpacity: index === 0 ? 0.1 : 0.13 }}
          d={rings.map((ring) => pathData(ring.map(on.toScreen))).join("")}
          fillRule="evenodd"
        />
      ))}
      <rect className="map-edge" {...box} />
      {contours.slice(1).map(({ reserveMm, rings }) => {
        const at = lowest(rings.flat().map(on.toScreen));
        return at === null ? null : (
          <Note key={reserveMm} at={{ x: at.x, y: at.y + 4 }} className="map-level">
            {onDimension(reserveMm, display)}
          </Note>
        );
      })}
      {/* biome-ignore lint/a11y/noStaticElementInteractions: what it gives by pointing, the list of places gives by keyboard */}
      <rect
        className="map-field"
        {...box}
        onPointerDown={(event) => event.stopPropagation()}
        onPointerMove={(event) => setPointed(cellAt(event))}
        onPointerLeave={() => setPointed(null)}
        onClick={(event) => {
          const cell = cellAt(event);
          setPointed(cell);
          props.take(cell);
        }}
      />
      {pointed !== null && (
        <g className="map-pointed">
          <PinMark at={on.toScreen(pointed.post)} radius={5} />
          {pin !== null && (
            <PinMark at={on.toScreen(onPlan(pin.alongMm, pin.offMm, turnOf(leaf, theta)))} radius={5} />
          )}
          <Note at={{ x: Math.max(8, box.x), y: box.y - 10 }} anchor="start" className="moving">
            {pin === null
              ? text("map.hereNot")
              : text("map.here", {
                  reserve: shownMm(Math.floor(pointed.reserveMm * 10) / 10, display),
                  along: shownMm(Math.round(pin.alongMm), display),
                  off: shownMm(Math.round(pin.offMm), display),
                })}
          </Note>
        </g>
      )}
    </g>
  );
}

function lowest(spots: readonly Spot[]): Spot | null {
  return spots.reduce<Spot | null>((low, spot) => (low === null || spot.y > low.y ? spot : low), null);
}
