import type { ConvexOutline } from "./outline.ts";
import type { Contact, RamSection } from "./ram-gap.ts";
import type { RamPose } from "./ram-pose.ts";

// The gap of two parted convex shapes is the least over the corners of each of their distance to the other.
// Followed one by one, corners change smoothly where the nearest of them would jump; search needs that.

/** Plan stations of a section's two ends. */
function ends(pose: RamPose, section: RamSection): { readonly t0: number; readonly t1: number } {
  const scale = pose.rise === 0 ? 1 : pose.plan / pose.length;
  const t0 = section.from * scale;
  return { t0, t1: section.toCountsFromLeafPin ? pose.plan - section.to * scale : section.to * scale };
}

function note(
  contact: Contact,
  section: RamSection,
  outline: ConvexOutline,
  gap: number,
  nx: number,
  ny: number,
  station: number,
  lateral: number,
  onRodEnd: boolean,
): void {
  contact.gap = gap;
  contact.nx = nx;
  contact.ny = ny;
  contact.station = station;
  contact.lateral = lateral;
  contact.onRodEnd = onRodEnd;
  contact.section = section;
  contact.outline = outline;
  contact.spare = 0;
  contact.normalOnRam = false;
}

/**
 * Distance from one corner of a ram section (0, 1 at its near end, 2, 3 at its far end, odd ones left of the
 * ram's direction) to an outline; negative inside it. Infinite for a rod that is not out.
 */
export function ramCornerGap(
  pose: RamPose,
  section: RamSection,
  corner: number,
  outline: ConvexOutline,
  contact: Contact,
): void {
  const { t0, t1 } = ends(pose, section);
  contact.gap = Number.POSITIVE_INFINITY;
  if (t1 < t0) return;
  const far = corner >= 2;
  const station = far ? t1 : t0;
  const lateral = corner % 2 === 1 ? section.halfWidth : -section.halfWidth;
  const kx = pose.ax + station * pose.ux - lateral * pose.uy;
  const ky = pose.ay + station * pose.uy + lateral * pose.ux;
  const { count, x, y, nx, ny, offset, edge } = outline;
  let height = Number.NEGATIVE_INFINITY;
  let nearest = 0;
  for (let i = 0; i < count; i++) {
    const above = (nx[i] as number) * kx + (ny[i] as number) * ky - (offset[i] as number);
    if (above > height) [height, nearest] = [above, i];
  }
  const mx = nx[nearest] as number;
  const my = ny[nearest] as number;
  const foot = (ky - (y[nearest] as number)) * mx - (kx - (x[nearest] as number)) * my;
  const spare = Math.min(foot, (edge[nearest] as number) - foot);
  const onRodEnd = far && section.toCountsFromLeafPin;
  if (height <= 0 || spare >= 0) {
    note(contact, section, outline, height, mx, my, station, lateral, onRodEnd);
    contact.feature = height <= 0 ? "overlap" : "outlineEdge";
    contact.spare = spare;
    return;
  }
  let square = Number.POSITIVE_INFINITY;
  for (let i = 0; i < count; i++) {
    const dx = kx - (x[i] as number);
    const dy = ky - (y[i] as number);
    if (dx * dx + dy * dy < square) [square, nearest] = [dx * dx + dy * dy, i];
  }
  const gap = Math.sqrt(square);
  const awayX = (kx - (x[nearest] as number)) / gap;
  const awayY = (ky - (y[nearest] as number)) / gap;
  note(contact, section, outline, gap, awayX, awayY, station, lateral, onRodEnd);
  contact.feature = "corners";
}

/** Distance from one corner of an outline to a ram section; negative inside it. Infinite for a rod that is not out. */
export function outlineCornerGap(
  pose: RamPose,
  section: RamSection,
  corner: number,
  outline: ConvexOutline,
  contact: Contact,
): void {
  const { t0, t1 } = ends(pose, section);
  contact.gap = Number.POSITIVE_INFINITY;
  if (t1 < t0) return;
  const { ux, uy } = pose;
  const h = section.halfWidth;
  const dx = (outline.x[corner] as number) - pose.ax;
  const dy = (outline.y[corner] as number) - pose.ay;
  const t = dx * ux + dy * uy;
  const w = dy * ux - dx * uy;
  const beyond = Math.max(t0 - t, t - t1);
  const beside = Math.abs(w) - h;
  // From the outline's corner to the ram: back along u past the far end, forward before the near one.
  const back = t - t1 > t0 - t ? -1 : 1;
  const side = w > 0 ? -1 : 1;
  const lateral = Math.min(Math.max(w, -h), h);
  const station = Math.min(Math.max(t, t0), t1);
  const onRodEnd = section.toCountsFromLeafPin && back < 0;
  if (beyond > 0 && beside > 0) {
    const gap = Math.hypot(beyond, beside);
    const [alongU, alongM] = [(back * beyond) / gap, (side * beside) / gap];
    const [nx, ny] = [alongU * ux - alongM * uy, alongU * uy + alongM * ux];
    note(contact, section, outline, gap, nx, ny, station, lateral, onRodEnd);
    contact.feature = "corners";
    return;
  }
  if (beside >= beyond) {
    note(contact, section, outline, beside, -side * uy, side * ux, t, -side * h, false);
    contact.feature = beside > 0 ? "ramSide" : "overlap";
    contact.spare = Math.min(t - t0, t1 - t);
  } else {
    note(contact, section, outline, beyond, back * ux, back * uy, back < 0 ? t1 : t0, w, onRodEnd);
    contact.feature = beyond > 0 ? "ramEnd" : "overlap";
    contact.spare = Math.min(h - w, h + w);
  }
  contact.normalOnRam = true;
}
