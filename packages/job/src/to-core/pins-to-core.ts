import {
  type LeafBracket,
  type LeafPinSite,
  leafPinSites,
  type Placement,
  type PostBracket,
  type PostPinSite,
  postPinSites,
  type Reach,
  type Span,
} from "@pintle/core";
import { fromSi, toSi } from "../quantity/units.ts";
import type { JobLeafBracket, JobPostBracket } from "../schema/brackets.ts";
import type { JobLeaf } from "../schema/leaf.ts";
import type { JobPlacement } from "../schema/pins.ts";
import { toPostFaces } from "./leaf-to-core.ts";

const metres = (mm: number): number => toSi(mm, "mm");
const millimetres = (si: number): number => fromSi(si, "mm");

/** Name of the site that a plain reach makes. */
export const plainReachName = "anywhere in reach";

/** The reach of both pins in SI, or the keys of the leaf that are missing to know it. */
export type ReachOfLeaf =
  | { readonly ok: true; readonly reach: Reach }
  | { readonly ok: false; readonly missing: readonly ("reach.postPin" | "reach.leafPin")[] };

function toSpan([from, to]: readonly [number, number], stepMm?: number): Span {
  return { from: metres(from), to: metres(to), step: stepMm === undefined ? null : metres(stepMm) };
}

/**
 * Where the job says that the pins are, SI, or null when it does not.
 *
 * ### Example
 *   const placement = { postPin: { alongMm: -150, outMm: 150 }, leafPin: { alongMm: 950, offMm: 140 } };
 *   expect(toPlacement(placement)).toEqual({ postPin: { along: -0.15, out: 0.15 }, leafPin: { along: 0.95, off: 0.14 }, rise: 0 });
 */
export function toPlacement(placement: JobPlacement | undefined): Placement | null {
  if (!placement) return null;
  return {
    postPin: { along: metres(placement.postPin.alongMm), out: metres(placement.postPin.outMm) },
    leafPin: { along: metres(placement.leafPin.alongMm), off: metres(placement.leafPin.offMm) },
    rise: metres(placement.riseMm ?? 0),
  };
}

/**
 * A placement of the core as the job file writes it, millimetres rounded to 1e-6 mm.
 *
 * ### Example
 *   const placement = { postPin: { along: -0.15, out: 0.15 }, leafPin: { along: 0.95, off: 0.14 }, rise: 0 };
 *   expect(fromPlacement(placement).postPin).toEqual({ alongMm: -150, outMm: 150 });
 *   expect(toPlacement(fromPlacement(placement))).toEqual(placement);
 */
export function fromPlacement(placement: Placement): JobPlacement {
  return {
    postPin: { alongMm: millimetres(placement.postPin.along), outMm: millimetres(placement.postPin.out) },
    leafPin: { alongMm: millimetres(placement.leafPin.along), offMm: millimetres(placement.leafPin.off) },
    riseMm: millimetres(placement.rise),
  };
}

/**
 * A post bracket of the job as the core's, SI (rule G13).
 *
 * ### Example
 *   const welded = { kind: "welded" as const, id: "W", alongMm: [-150, -100] as [number, number], outMm: [100, 150] as [number, number] };
 *   expect(toPostBracket(welded)).toEqual({
 *     kind: "welded",
 *     id: "W",
 *     along: { from: -0.15, to: -0.1, step: null },
 *     out: { from: 0.1, to: 0.15, step: null },
 *   });
 */
export function toPostBracket(bracket: JobPostBracket): PostBracket {
  if (bracket.kind === "welded") {
    return { kind: "welded", id: bracket.id, along: toSpan(bracket.alongMm), out: toSpan(bracket.outMm) };
  }
  const onFace = { id: bracket.id, face: bracket.face, position: toSpan(bracket.positionMm, bracket.stepMm) };
  switch (bracket.kind) {
    case "plate":
      return { kind: "plate", ...onFace, standOffs: bracket.standOffMm.map(metres) };
    case "slotted":
      return { kind: "slotted", ...onFace, slot: toSpan(bracket.slotMm) };
    case "indexing":
      return {
        kind: "indexing",
        ...onFace,
        boltStandOff: metres(bracket.boltStandOffMm),
        radius: metres(bracket.radiusMm),
        angles: bracket.anglesDeg.map((angle) => toSi(angle, "deg")),
      };
  }
}

/**
 * A leaf bracket of the job as the core's, SI (rule G13).
 *
 * ### Example
 *   const bracket = { id: "L", standOffMm: [60], membersMm: [[700, 760]] as [number, number][] };
 *   expect(toLeafBracket(bracket)).toEqual({ id: "L", standOffs: [0.06], members: [{ from: 0.7, to: 0.76, step: null }] });
 */
export function toLeafBracket(bracket: JobLeafBracket): LeafBracket {
  return {
    id: bracket.id,
    standOffs: bracket.standOffMm.map(metres),
    members: bracket.membersMm.map((member) => toSpan(member)),
  };
}

/**
 * Where the pins of a leaf may go, SI (rules G12, G13). Brackets of one pin replace `reach` for that pin.
 *
 * The rise is that of the reach, else that of the placement, else 0. Errors (returned): the keys that are missing.
 *
 * ### Example
 *   const leaf = { id: "east", hingeSide: "left" as const, swing: "toward" as const, openAngleDeg: 90, lengthMm: 3600, heelMm: 30, thicknessMm: 50, faceMm: 25 };
 *   expect(toReach(leaf)).toEqual({ ok: false, missing: ["reach.postPin", "reach.leafPin"] });
 */
export function toReach(leaf: JobLeaf): ReachOfLeaf {
  const postPin = postSites(leaf);
  const leafPin = leafSites(leaf);
  if (postPin && leafPin) {
    const rise = metres(leaf.reach?.riseMm ?? leaf.placement?.riseMm ?? 0);
    return { ok: true, reach: { postPin, leafPin, rise } };
  }
  return {
    ok: false,
    missing: [...(postPin ? [] : ["reach.postPin" as const]), ...(leafPin ? [] : ["reach.leafPin" as const])],
  };
}

function postSites(leaf: JobLeaf): PostPinSite[] | null {
  const brackets = leaf.brackets?.post;
  if (brackets) {
    // Only welded brackets need no faces, and readJob refuses others without them: zeros are never read.
    const faces = toPostFaces(leaf) ?? { ramSideOut: 0, gatewayAlong: 0 };
    return brackets.flatMap((bracket) => postPinSites(toPostBracket(bracket), faces));
  }
  const plain = leaf.reach?.postPin;
  return plain ? [{ bracket: plainReachName, along: toSpan(plain.alongMm), out: toSpan(plain.outMm) }] : null;
}

function leafSites(leaf: JobLeaf): LeafPinSite[] | null {
  const brackets = leaf.brackets?.leaf;
  if (brackets)
    return brackets.flatMap((bracket) => leafPinSites(toLeafBracket(bracket), metres(leaf.faceMm)));
  const plain = leaf.reach?.leafPin;
  return plain ? [{ bracket: plainReachName, along: toSpan(plain.alongMm), off: toSpan(plain.offMm) }] : null;
}
