import type { FixedThing, Leaf, LeafBox } from "../leaf/leaf.ts";
import type { Point } from "../linkage/pins.ts";
import { turnSign } from "../linkage/pins.ts";
import { gapTolerance } from "./least-gap.ts";
import type { ConvexOutline } from "./outline.ts";
import { convexPieces } from "./outline.ts";
import type { Contact, RamSection } from "./ram-gap.ts";
import { nearerGap, newContact } from "./ram-gap.ts";
import type { RamPose } from "./ram-pose.ts";
import { newPose } from "./ram-pose.ts";

/** Least gap between the swinging leaf and one fixed thing, the leaf angle θ [rad] and the leaf's point there. */
export interface SweepGap {
  readonly name: string;
  readonly gap: number;
  readonly atAngle: number;
  readonly where: Point;
}

/** A leaf box as a rectangle about a line through its middle, so that the ram's distance code serves. */
function boxSection(box: LeafBox): { readonly section: RamSection; readonly middle: number } {
  return {
    section: {
      from: box.alongFrom,
      to: box.alongTo,
      toCountsFromLeafPin: false,
      halfWidth: (box.offTo - box.offFrom) / 2,
    },
    middle: (box.offTo + box.offFrom) / 2,
  };
}

function turnBox(pose: RamPose, middle: number, phi: number): void {
  pose.ux = Math.cos(phi);
  pose.uy = Math.sin(phi);
  pose.ax = -middle * pose.uy;
  pose.ay = middle * pose.ux;
}

/**
 * Floor under the gap for turns within ±halfTurn: the contact's direction kept, and every corner that could
 * come nearer followed on its circle about the hinge axis (speed exact, acceleration = radius).
 */
function sweepFloor(pose: RamPose, contact: Contact, halfTurn: number): number {
  const { section, outline, nx, ny } = contact;
  if (section === null || outline === null) return Number.POSITIVE_INFINITY;
  const square = 0.5 * halfTurn * halfTurn;
  let floor = Number.POSITIVE_INFINITY;
  const own = (x: number, y: number, height: number) => {
    const speed = Math.abs(ny * x - nx * y);
    floor = Math.min(floor, height - speed * halfTurn - Math.hypot(x, y) * square);
  };
  const corners = [section.from, section.to].flatMap((t) =>
    [-section.halfWidth, section.halfWidth].map((w) => ({
      x: pose.ax + t * pose.ux - w * pose.uy,
      y: pose.ay + t * pose.uy + w * pose.ux,
    })),
  );
  const outlineHeight = (i: number) => nx * (outline.x[i] as number) + ny * (outline.y[i] as number);
  if (contact.normalOnRam) {
    const face = Math.min(...corners.map((corner) => nx * corner.x + ny * corner.y));
    for (let i = 0; i < outline.count; i++) {
      own(outline.x[i] as number, outline.y[i] as number, face - outlineHeight(i));
    }
  } else {
    let support = Number.NEGATIVE_INFINITY;
    for (let i = 0; i < outline.count; i++) support = Math.max(support, outlineHeight(i));
    for (const corner of corners) own(corner.x, corner.y, nx * corner.x + ny * corner.y - support);
  }
  return floor;
}

/**
 * Least gap between the leaf and each fixed thing over the whole travel (rule G9), bracketed to 1 µm;
 * negative where the leaf would run into it.
 *
 * Frame: rule G1, metres. Things without area are left out.
 *
 * ### Example
 *   const leaf = { heel: 0.03, length: 3.6, thickness: 0.05, face: 0.025, boxes: [], travel: { swing: "toward" as const, openAngle: Math.PI / 2 } };
 *   const pier = { name: "pier", outline: [{ x: -0.44, y: -0.215 }, { x: -0.04, y: -0.215 }, { x: -0.04, y: 0.07 }, { x: -0.44, y: 0.07 }] };
 *   // Fully open the leaf's face stands at along = −25 mm, the pier's at −40 mm.
 *   expect(sweepGaps(leaf, [pier])[0]?.gap).toBeCloseTo(0.015, 6);
 */
export function sweepGaps(leaf: Leaf, fixed: readonly FixedThing[]): SweepGap[] {
  const panel: LeafBox = {
    alongFrom: leaf.heel,
    alongTo: leaf.length,
    offFrom: leaf.face - leaf.thickness,
    offTo: leaf.face,
  };
  const boxes = [panel, ...leaf.boxes].map(boxSection);
  const found: SweepGap[] = [];
  for (const thing of fixed) {
    const gap = leastSweep(boxes, convexPieces(thing.outline), leaf.travel.openAngle, turnSign(leaf.travel));
    if (gap !== null) found.push({ name: thing.name, ...gap });
  }
  return found;
}

function leastSweep(
  boxes: readonly { readonly section: RamSection; readonly middle: number }[],
  outlines: readonly ConvexOutline[],
  openAngle: number,
  sign: 1 | -1,
): Omit<SweepGap, "name"> | null {
  const pose = newPose();
  const contact = newContact();
  let best: Omit<SweepGap, "name"> | null = null;
  const look = (section: RamSection, middle: number, outline: ConvexOutline, theta: number): void => {
    turnBox(pose, middle, sign * theta);
    contact.gap = Number.POSITIVE_INFINITY;
    nearerGap(pose, section, outline, contact);
    if (best !== null && contact.gap >= best.gap) return;
    const x = pose.ax + contact.station * pose.ux - contact.lateral * pose.uy;
    const y = pose.ay + contact.station * pose.uy + contact.lateral * pose.ux;
    best = { gap: contact.gap, atAngle: theta, where: { x, y } };
  };
  for (const { section, middle } of boxes) {
    for (const outline of outlines) {
      look(section, middle, outline, 0);
      look(section, middle, outline, openAngle);
      const waiting = [{ theta: openAngle / 2, half: openAngle / 2 }];
      for (let next = waiting.pop(); next !== undefined; next = waiting.pop()) {
        const { theta, half } = next;
        look(section, middle, outline, theta);
        const least = (best as Omit<SweepGap, "name"> | null)?.gap ?? Number.POSITIVE_INFINITY;
        if (sweepFloor(pose, contact, half) >= least - gapTolerance) continue;
        waiting.push(
          { theta: theta - half / 2, half: half / 2 },
          { theta: theta + half / 2, half: half / 2 },
        );
      }
    }
  }
  return best;
}
