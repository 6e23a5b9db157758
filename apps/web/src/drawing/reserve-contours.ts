import type { ReserveMap } from "@pintle/core";
import { fromSi } from "@pintle/job";
import { contours } from "d3-contour";
import type { Spot } from "./projection.ts";

/** Places of the post pin from which at least `reserveMm` can be had: rings on the plan [mm]. */
export interface Contour {
  readonly reserveMm: number;
  readonly rings: readonly Spot[][];
}

/** Steps between contours that read well on a tape [mm]. */
const steps = { metric: [2, 5, 10, 20, 50], us: [25.4 / 16, 25.4 / 8, 25.4 / 4, 25.4 / 2, 25.4] } as const;

/** Reserve stands far below zero where there is no leaf pin at all; contours of what can be had are not bent by it [mm]. */
const floor = -40;

export function reserveContours(map: ReserveMap, display: "metric" | "us"): Contour[] {
  const values = Array.from(map.reserve, (value) =>
    Number.isNaN(value) ? floor : Math.max(floor, value * 1000),
  );
  const most = Math.max(...values);
  if (most <= 0) return [];
  const step = steps[display].find((one) => most / one <= 7) ?? 50;
  const levels = Array.from({ length: Math.floor(most / step) + 1 }, (_, i) => i * step);
  const [columns, rows] = [map.along.length, map.out.length];
  const at = (list: readonly number[], position: number): number => {
    const [first, last] = [list[0] as number, list.at(-1) as number];
    const share = Math.min(1, Math.max(0, (position - 0.5) / (list.length - 1)));
    return fromSi(first + (last - first) * share, "mm");
  };
  const made = contours().size([columns, rows]).thresholds(levels)(values);
  return made.map((one) => ({
    reserveMm: one.value,
    rings: one.coordinates.flatMap((polygon) =>
      polygon.map((ring) => ring.map(([x = 0, y = 0]) => ({ x: at(map.along, x), y: at(map.out, y) }))),
    ),
  }));
}
