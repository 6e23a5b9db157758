import { entry, type Matrix } from "./symmetric-matrix.ts";

/**
 * How uncertain a point in plan is: its covariance [m²] and the one-standard-error ellipse.
 * "along" and "across" are the first and second coordinate of the point's own frame.
 */
export interface PinSpread {
  readonly covariance: {
    readonly alongAlong: number;
    readonly alongAcross: number;
    readonly acrossAcross: number;
  };
  readonly ellipse: {
    /** Semi-axes [m]. */
    readonly major: number;
    readonly minor: number;
    /** Direction of the major axis, counter-clockwise from "along" [rad], in (−π/2, π/2]. */
    readonly direction: number;
  };
}

/** Spread of the point whose coordinates are unknowns `first` and `first + 1` of a covariance matrix [m²]. */
export function pinSpread(covariance: Matrix, first: number): PinSpread {
  const alongAlong = entry(covariance, first, first);
  const alongAcross = entry(covariance, first, first + 1);
  const acrossAcross = entry(covariance, first + 1, first + 1);
  const mean = (alongAlong + acrossAcross) / 2;
  const half = Math.hypot((alongAlong - acrossAcross) / 2, alongAcross);
  return {
    covariance: { alongAlong, alongAcross, acrossAcross },
    ellipse: {
      major: Math.sqrt(mean + half),
      minor: Math.sqrt(Math.max(0, mean - half)),
      direction: Math.atan2(2 * alongAcross, alongAlong - acrossAcross) / 2,
    },
  };
}
