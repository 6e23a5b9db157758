/**
 * Where the ram lies at one leaf angle, in one frame: from post pin A to leaf pin B, with unit direction u.
 * Mutable and reused, since search and swing fill millions of them. Metres.
 */
export interface RamPose {
  ax: number;
  ay: number;
  bx: number;
  by: number;
  ux: number;
  uy: number;
  /** Pin to pin in plan. */
  plan: number;
  /** Pin to pin, true length. */
  length: number;
  /** Rise between the pins. */
  rise: number;
}

export const newPose = (): RamPose => ({
  ax: 0,
  ay: 0,
  bx: 1,
  by: 0,
  ux: 1,
  uy: 0,
  plan: 1,
  length: 1,
  rise: 0,
});

function aim(pose: RamPose, rise: number): void {
  const vx = pose.bx - pose.ax;
  const vy = pose.by - pose.ay;
  const plan = Math.sqrt(vx * vx + vy * vy);
  pose.plan = plan;
  pose.rise = rise;
  pose.length = rise === 0 ? plan : Math.sqrt(plan * plan + rise * rise);
  // Pins on top of each other have no direction; any will do, and the stroke limit fails there anyway.
  pose.ux = plan > 0 ? vx / plan : 1;
  pose.uy = plan > 0 ? vy / plan : 0;
}

/** The ram in the fixed frame: the leaf pin (d, e) turned by φ. */
export function poseInFixedFrame(
  pose: RamPose,
  px: number,
  py: number,
  d: number,
  e: number,
  rise: number,
  cosPhi: number,
  sinPhi: number,
): void {
  pose.ax = px;
  pose.ay = py;
  pose.bx = d * cosPhi - e * sinPhi;
  pose.by = d * sinPhi + e * cosPhi;
  aim(pose, rise);
}

/** The ram in the leaf's axes: the post pin (px, py) turned back by φ. */
export function poseInLeafFrame(
  pose: RamPose,
  px: number,
  py: number,
  d: number,
  e: number,
  rise: number,
  cosPhi: number,
  sinPhi: number,
): void {
  pose.ax = px * cosPhi + py * sinPhi;
  pose.ay = py * cosPhi - px * sinPhi;
  pose.bx = d;
  pose.by = e;
  aim(pose, rise);
}
