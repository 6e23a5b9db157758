import type { LengthRange } from "../linkage/pin-to-pin.ts";
import type { Placement } from "../linkage/pins.ts";

/**
 * Ceilings, valid over the whole travel, of how fast the ram moves per radian of leaf turn. They let the
 * least gap be bracketed between samples instead of hoped for. Closed forms of rule G5, metres and radians.
 */
export interface TravelRates {
  /** |dℓ/dφ| in plan: the rod's far end along the ram. */
  readonly slide: number;
  /** |d²ℓ/dφ²|. */
  readonly slideChange: number;
  /** |dβ/dφ| of the ram's direction β, in the fixed frame and in the leaf's. */
  readonly turnFixed: number;
  readonly turnLeaf: number;
  /** |d²β/dφ²|, the same in both. */
  readonly turnChange: number;
  /** Speed (= acceleration) of the post pin in the leaf's axes: its radius. */
  readonly postRadius: number;
  /** What a rise adds to the drift of a tube point along the ram, per metre of station. */
  readonly riseDrift: number;
  readonly riseDriftChange: number;
}

export function travelRates(placement: Placement, range: LengthRange): TravelRates {
  const rho = Math.hypot(placement.postPin.along, placement.postPin.out);
  const g = Math.hypot(placement.leafPin.along, placement.leafPin.off);
  const rise2 = placement.rise * placement.rise;
  const least2 = Math.max(range.least * range.least - rise2, 1e-12);
  const greatest2 = Math.max(range.greatest * range.greatest - rise2, least2);
  const least = Math.sqrt(least2);
  // The lever arm never exceeds the smaller of the two radii, and dℓ/dφ is the lever arm in plan.
  const slide = Math.min(rho, g);
  const slideChange = (rho * g + slide * slide) / least;
  const half = 0.5 * (g * g - rho * rho);
  // dβ/dφ = ½ + half/ℓ² in the fixed frame, one less in the leaf's; monotonic in ℓ, so greatest at an end.
  const ends = [half / least2, half / greatest2];
  const turnFixed = Math.max(...ends.map((end) => Math.abs(0.5 + end)));
  const turnLeaf = Math.max(...ends.map((end) => Math.abs(end - 0.5)));
  const turnChange = (2 * Math.abs(half) * slide) / (least * least2);
  const trueLeast = Math.sqrt(least2 + rise2);
  return {
    slide,
    slideChange,
    turnFixed,
    turnLeaf,
    turnChange,
    postRadius: rho,
    riseDrift: (rise2 * slide) / (trueLeast * trueLeast * trueLeast),
    riseDriftChange: rise2 * (slideChange / trueLeast ** 3 + (3 * slide * slide) / trueLeast ** 4),
  };
}
