import type { ReserveMap } from "@pintle/core";
import { fromSi } from "@pintle/job";
import type { Spot } from "./projection.ts";

/** One position of the map. */
export interface MapCell {
  readonly post: Spot;
  readonly reserveMm: number;
  readonly leafPin: { readonly alongMm: number; readonly offMm: number } | null;
}

function cell(map: ReserveMap, index: number): MapCell {
  const columns = map.along.length;
  const pin = map.leafPin[index] ?? null;
  return {
    post: {
      x: fromSi(map.along[index % columns] as number, "mm"),
      y: fromSi(map.out[Math.floor(index / columns)] as number, "mm"),
    },
    reserveMm: (map.reserve[index] as number) * 1000,
    leafPin: pin && { alongMm: fromSi(pin.along, "mm"), offMm: fromSi(pin.off, "mm") },
  };
}

/** The position of the map nearest to a spot of the plan. */
export function nearestCell(map: ReserveMap, spot: Spot): MapCell {
  const nearest = (list: readonly number[], mm: number): number => {
    const [first, last] = [list[0] as number, list.at(-1) as number];
    const position = ((mm / 1000 - first) / (last - first)) * (list.length - 1);
    return Math.min(list.length - 1, Math.max(0, Math.round(position)));
  };
  return cell(map, nearest(map.out, spot.y) * map.along.length + nearest(map.along, spot.x));
}

/** The best position of the map; null when nothing fits anywhere on it. */
export function bestCell(map: ReserveMap): MapCell | null {
  let best: MapCell | null = null;
  map.leafPin.forEach((pin, index) => {
    const here = map.reserve[index] as number;
    if (pin !== null && here * 1000 > (best?.reserveMm ?? 0)) best = cell(map, index);
  });
  return best;
}
