import type { ConvexOutline } from "./outline.ts";
import type { RamPose } from "./ram-pose.ts";

/**
 * A stretch of the ram that must keep clear, along the pin-to-pin line. `from` counts from the post pin.
 * `to` does so too for a piece of tube; for the rod it counts back from the leaf pin, since the rod's far
 * end travels with that pin. True lengths [m] (a rise shortens them in plan).
 */
export interface RamSection {
  readonly from: number;
  readonly to: number;
  readonly toCountsFromLeafPin: boolean;
  readonly halfWidth: number;
}

/** What touches first: decides how the gap may grow when the pins move (see gap-ceiling.ts). */
export type ContactFeature = "outlineEdge" | "ramSide" | "ramEnd" | "corners" | "overlap";

/**
 * The nearest pair between one ram section and one outline. Mutable and reused.
 *
 * `gap` is the distance [m]; negative when they overlap: minus the shortest move that parts them. `n` is the
 * unit direction from outline to ram along which the gap is measured. The ram's point is given in the
 * ram's own axes (station along u from the post pin, lateral to the left of u), both in plan.
 */
export interface Contact {
  gap: number;
  nx: number;
  ny: number;
  station: number;
  lateral: number;
  /** The ram's point sits on the rod's far end and travels with the leaf pin. */
  onRodEnd: boolean;
  feature: ContactFeature;
  /** The normal belongs to the ram (its side or end) and turns with it; otherwise it stands with the outline. */
  normalOnRam: boolean;
  /** How far the contact may slide before another feature takes over [m]. */
  spare: number;
  section: RamSection | null;
  outline: ConvexOutline | null;
}

export const newContact = (): Contact => ({
  gap: Number.POSITIVE_INFINITY,
  nx: 1,
  ny: 0,
  station: 0,
  lateral: 0,
  onRodEnd: false,
  feature: "corners",
  normalOnRam: false,
  spare: 0,
  section: null,
  outline: null,
});

// Corner coordinates in the ram's axes; outlines have few corners, and this avoids an allocation a call.
let stations = new Float64Array(16);
let laterals = new Float64Array(16);

/**
 * Gap between a ram section and a convex outline, written to `contact` when it is smaller than the gap
 * already there. Both in the same frame.
 *
 * Exact: the largest separation over the edge normals of both is the distance (or minus the depth), unless
 * two corners are nearest, when the corner distance is.
 */
export function nearerGap(
  pose: RamPose,
  section: RamSection,
  outline: ConvexOutline,
  contact: Contact,
): void {
  const { ax, ay, ux, uy } = pose;
  const scale = pose.rise === 0 ? 1 : pose.plan / pose.length;
  const t0 = section.from * scale;
  const t1 = section.toCountsFromLeafPin ? pose.plan - section.to * scale : section.to * scale;
  if (t1 < t0) return;
  const h = section.halfWidth;
  const count = outline.count;
  const { x, y, nx, ny, offset } = outline;
  if (stations.length < count) {
    stations = new Float64Array(count);
    laterals = new Float64Array(count);
  }
  let minT = Number.POSITIVE_INFINITY;
  let maxT = Number.NEGATIVE_INFINITY;
  let minW = Number.POSITIVE_INFINITY;
  let maxW = Number.NEGATIVE_INFINITY;
  let atMinT = 0;
  let atMaxT = 0;
  let atMinW = 0;
  let atMaxW = 0;
  for (let i = 0; i < count; i++) {
    const dx = (x[i] as number) - ax;
    const dy = (y[i] as number) - ay;
    const t = dx * ux + dy * uy;
    const w = dy * ux - dx * uy;
    stations[i] = t;
    laterals[i] = w;
    if (t < minT) {
      minT = t;
      atMinT = i;
    }
    if (t > maxT) {
      maxT = t;
      atMaxT = i;
    }
    if (w < minW) {
      minW = w;
      atMinW = i;
    }
    if (w > maxW) {
      maxW = w;
      atMaxW = i;
    }
  }
  // Separation along the ram's own four normals.
  let best = minW - h;
  let kind = 0;
  let corner = atMinW;
  if (-h - maxW > best) {
    best = -h - maxW;
    kind = 1;
    corner = atMaxW;
  }
  if (minT - t1 > best) {
    best = minT - t1;
    kind = 2;
    corner = atMinT;
  }
  if (t0 - maxT > best) {
    best = t0 - maxT;
    kind = 3;
    corner = atMaxT;
  }
  // Separation along the outline's normals. Every separation is a floor of the gap, so a best one that is
  // already no smaller than the known least gap ends the work.
  if (best >= contact.gap) return;
  const cx = ax + ux * 0.5 * (t0 + t1);
  const cy = ay + uy * 0.5 * (t0 + t1);
  const half = 0.5 * (t1 - t0);
  for (let i = 0; i < count; i++) {
    const mx = nx[i] as number;
    const my = ny[i] as number;
    const along = mx * ux + my * uy;
    const across = my * ux - mx * uy;
    const gap = mx * cx + my * cy - (offset[i] as number) - Math.abs(along) * half - Math.abs(across) * h;
    if (gap > best) {
      best = gap;
      kind = 4;
      corner = i;
    }
  }
  if (best >= contact.gap) return;

  let station: number;
  let lateral: number;
  let spare: number;
  // Into locals first: the pair already in `contact` must stay whole when this one proves to be no nearer.
  let normalX: number;
  let normalY: number;
  let feature: ContactFeature;
  if (kind === 4) {
    const mx = nx[corner] as number;
    const my = ny[corner] as number;
    station = mx * ux + my * uy > 0 ? t0 : t1;
    lateral = my * ux - mx * uy > 0 ? -h : h;
    const kx = ax + station * ux - lateral * uy - (x[corner] as number);
    const ky = ay + station * uy + lateral * ux - (y[corner] as number);
    const foot = ky * mx - kx * my;
    spare = Math.min(foot, (outline.edge[corner] as number) - foot);
    normalX = mx;
    normalY = my;
    feature = "outlineEdge";
  } else if (kind < 2) {
    const side = kind === 0 ? -1 : 1;
    station = stations[corner] as number;
    lateral = -side * h;
    spare = Math.min(station - t0, t1 - station);
    normalX = -side * uy;
    normalY = side * ux;
    feature = "ramSide";
  } else {
    const end = kind === 2 ? -1 : 1;
    station = kind === 2 ? t1 : t0;
    lateral = laterals[corner] as number;
    spare = Math.min(lateral + h, h - lateral);
    normalX = end * ux;
    normalY = end * uy;
    feature = "ramEnd";
  }
  if (best > 0 && spare < 0) {
    nearestCorners(pose, outline, t0, t1, h, contact, section);
    return;
  }
  contact.gap = best;
  contact.nx = normalX;
  contact.ny = normalY;
  contact.feature = best <= 0 ? "overlap" : feature;
  contact.normalOnRam = kind < 4;
  contact.station = station;
  contact.lateral = lateral;
  contact.onRodEnd = section.toCountsFromLeafPin && station > 0.5 * (t0 + t1);
  contact.spare = spare;
  contact.section = section;
  contact.outline = outline;
}

/** The general case of two parted convex shapes, reached when the quick foot falls beside its edge. */
function nearestCorners(
  pose: RamPose,
  outline: ConvexOutline,
  t0: number,
  t1: number,
  h: number,
  contact: Contact,
  section: RamSection,
): void {
  const { ax, ay, ux, uy } = pose;
  const { count, x, y, nx, ny, offset, edge } = outline;
  let best = contact.gap;
  let dirT = 0;
  let dirW = 0;
  let station = 0;
  let lateral = 0;
  let found = false;
  for (let i = 0; i < count; i++) {
    const t = stations[i] as number;
    const w = laterals[i] as number;
    const nearT = Math.min(Math.max(t, t0), t1);
    const nearW = Math.min(Math.max(w, -h), h);
    const gap = Math.sqrt((t - nearT) * (t - nearT) + (w - nearW) * (w - nearW));
    if (gap < best && gap > 0) {
      best = gap;
      dirT = (nearT - t) / gap;
      dirW = (nearW - w) / gap;
      station = nearT;
      lateral = nearW;
      found = true;
    }
  }
  for (let k = 0; k < 4; k++) {
    const t = k < 2 ? t0 : t1;
    const w = k % 2 === 0 ? -h : h;
    const kx = ax + t * ux - w * uy;
    const ky = ay + t * uy + w * ux;
    for (let i = 0; i < count; i++) {
      const mx = nx[i] as number;
      const my = ny[i] as number;
      const gap = mx * kx + my * ky - (offset[i] as number);
      if (gap <= 0 || gap >= best) continue;
      const foot = (ky - (y[i] as number)) * mx - (kx - (x[i] as number)) * my;
      if (foot < 0 || foot > (edge[i] as number)) continue;
      best = gap;
      dirT = mx * ux + my * uy;
      dirW = my * ux - mx * uy;
      station = t;
      lateral = w;
      found = true;
    }
  }
  if (!found) return;
  contact.gap = best;
  contact.nx = dirT * ux - dirW * uy;
  contact.ny = dirT * uy + dirW * ux;
  contact.station = station;
  contact.lateral = lateral;
  contact.onRodEnd = section.toCountsFromLeafPin && station > 0.5 * (t0 + t1);
  contact.feature = "corners";
  contact.normalOnRam = false;
  contact.spare = 0;
  contact.section = section;
  contact.outline = outline;
}
