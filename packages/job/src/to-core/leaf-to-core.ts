import type { FixedThing, Leaf, PostFaces, Ram, Travel } from "@pintle/core";
import { toSi } from "../quantity/units.ts";
import type { JobLeaf } from "../schema/leaf.ts";
import type { JobRam } from "../schema/ram.ts";
import { withoutClosingCorner } from "../schema/simple-outline.ts";

const metres = (mm: number): number => toSi(mm, "mm");

/**
 * Travel of a job's leaf: swing and opening angle [rad].
 *
 * ### Example
 *   const leaf = { id: "east", hingeSide: "left" as const, swing: "toward" as const, openAngleDeg: 90, lengthMm: 3600, heelMm: 30, thicknessMm: 50, faceMm: 25 };
 *   expect(toTravel(leaf)).toEqual({ swing: "toward", openAngle: Math.PI / 2 });
 */
export function toTravel(leaf: JobLeaf): Travel {
  return { swing: leaf.swing, openAngle: toSi(leaf.openAngleDeg, "deg") };
}

/**
 * A job's leaf as the core's, metres and radians.
 *
 * ### Example
 *   const leaf = { id: "east", hingeSide: "left" as const, swing: "toward" as const, openAngleDeg: 90, lengthMm: 3600, heelMm: 30, thicknessMm: 50, faceMm: 25 };
 *   expect(toLeaf(leaf).length).toBe(3.6);
 */
export function toLeaf(leaf: JobLeaf): Leaf {
  return {
    heel: metres(leaf.heelMm),
    length: metres(leaf.lengthMm),
    thickness: metres(leaf.thicknessMm),
    face: metres(leaf.faceMm),
    boxes: (leaf.boxes ?? []).map((box) => ({
      alongFrom: metres(box.alongMm[0]),
      alongTo: metres(box.alongMm[1]),
      offFrom: metres(box.offMm[0]),
      offTo: metres(box.offMm[1]),
    })),
    travel: toTravel(leaf),
  };
}

/**
 * A leaf's fixed things, metres in the fixed frame. A corner that only closes the outline is left out.
 *
 * ### Example
 *   const leaf = { id: "east", hingeSide: "left" as const, swing: "toward" as const, openAngleDeg: 90, lengthMm: 3600, heelMm: 30, thicknessMm: 50, faceMm: 25 };
 *   const pier = { name: "pier", outlineMm: [[-440, -215], [-40, -215], [-40, 70]] as [number, number][] };
 *   expect(toFixedThings({ ...leaf, fixed: [pier] })[0]?.outline[0]).toEqual({ x: -0.44, y: -0.215 });
 */
export function toFixedThings(leaf: JobLeaf): FixedThing[] {
  return (leaf.fixed ?? []).map((thing) => ({
    name: thing.name,
    outline: withoutClosingCorner(thing.outlineMm).map(([along, out]) => ({
      x: metres(along),
      y: metres(out),
    })),
  }));
}

/**
 * Faces of the hinge post [m], or null when the job does not give them.
 *
 * ### Example
 *   const leaf = { id: "east", hingeSide: "left" as const, swing: "toward" as const, openAngleDeg: 90, lengthMm: 3600, heelMm: 30, thicknessMm: 50, faceMm: 25 };
 *   expect(toPostFaces(leaf)).toBe(null);
 *   expect(toPostFaces({ ...leaf, post: { gatewayFaceAlongMm: -40, ramFaceOutMm: 70 } })).toEqual({ ramSideOut: 0.07, gatewayAlong: -0.04 });
 */
export function toPostFaces(leaf: JobLeaf): PostFaces | null {
  if (!leaf.post) return null;
  return { ramSideOut: metres(leaf.post.ramFaceOutMm), gatewayAlong: metres(leaf.post.gatewayFaceAlongMm) };
}

/**
 * A job's ram as the core's, SI. Margins left out are 0; what the maker's sheet does not give is null.
 *
 * ### Example
 *   const ram = { id: "r", retractedMm: 760, strokeMm: 400, tube: [{ fromMm: -60, toMm: 560, halfWidthMm: 45 }], rodHalfWidthMm: 12 };
 *   expect(toRam(ram).stroke).toBe(0.4);
 *   expect(toRam(ram).thrust).toBe(null);
 */
export function toRam(ram: JobRam): Ram {
  return {
    id: ram.id,
    retracted: metres(ram.retractedMm),
    stroke: metres(ram.strokeMm),
    retractedMargin: metres(ram.retractedMarginMm ?? 0),
    extendedMargin: metres(ram.extendedMarginMm ?? 0),
    tube: ram.tube.map((stretch) => ({
      from: metres(stretch.fromMm),
      to: metres(stretch.toMm),
      halfWidth: metres(stretch.halfWidthMm),
    })),
    rodHalfWidth: metres(ram.rodHalfWidthMm),
    speed: ram.speedMmS === undefined ? null : toSi(ram.speedMmS, "mm/s"),
    thrust: ram.thrustN ?? null,
    longestLeaf: ram.longestLeafMm === undefined ? null : metres(ram.longestLeafMm),
    heaviestLeaf: ram.heaviestLeafKg ?? null,
  };
}
