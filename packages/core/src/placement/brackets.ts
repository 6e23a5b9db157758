import type { LeafPinSite, PostPinSite, Span } from "./reach.ts";

/** A face of the hinge post, fixed frame: "ramSide" looks along +out, "gateway" looks along +along into the opening. */
export type PostFace = "ramSide" | "gateway";

/** Where the two usable faces of the hinge post are, measured from the hinge axis [m]. */
export interface PostFaces {
  /** `out` of the ram-side face. */
  readonly ramSideOut: number;
  /** `along` of the gateway-side face. */
  readonly gatewayAlong: number;
}

/**
 * A bracket that carries the post pin (rule G13), metres and radians.
 *
 * - `plate`: bolted to a face at a position along it, the pin standing off by one of a few fixed choices;
 * - `slotted`: as `plate`, but the stand-off is anywhere in a slot;
 * - `indexing`: an arm of `radius` about a bolt that stands off the face, locked at one of the listed
 *   angles (counter-clockwise from +along);
 * - `welded`: anywhere in a rectangle.
 *
 * Positions on the ram-side face are `along`, on the gateway face `out`.
 */
export type PostBracket =
  | {
      readonly kind: "plate";
      readonly id: string;
      readonly face: PostFace;
      readonly position: Span;
      readonly standOffs: readonly number[];
    }
  | {
      readonly kind: "slotted";
      readonly id: string;
      readonly face: PostFace;
      readonly position: Span;
      readonly slot: Span;
    }
  | {
      readonly kind: "indexing";
      readonly id: string;
      readonly face: PostFace;
      readonly position: Span;
      readonly boltStandOff: number;
      readonly radius: number;
      readonly angles: readonly number[];
    }
  | { readonly kind: "welded"; readonly id: string; readonly along: Span; readonly out: Span };

/** A bracket that carries the leaf pin: stand-off choices from the leaf's ram-side face, landing only on solid members [m]. */
export interface LeafBracket {
  readonly id: string;
  readonly standOffs: readonly number[];
  readonly members: readonly Span[];
}

const at = (value: number): Span => ({ from: value, to: value, step: null });
const moved = (span: Span, by: number): Span => ({ ...span, from: span.from + by, to: span.to + by });

/**
 * Every position that a post bracket allows, as sites for the search (rule G13).
 *
 * Frame: fixed; metres. One site for each discrete choice (stand-off or locking angle), named in `bracket`.
 *
 * ### Example
 *   const faces = { ramSideOut: 0.07, gatewayAlong: -0.04 };
 *   const position = { from: -0.3, to: -0.1, step: 0.01 };
 *   const plate = { kind: "plate" as const, id: "P", face: "ramSide" as const, position, standOffs: [0.06, 0.09] };
 *   expect(postPinSites(plate, faces).map((site) => site.out.from)).toEqual([0.13, 0.16]);
 */
export function postPinSites(bracket: PostBracket, faces: PostFaces): PostPinSite[] {
  if (bracket.kind === "welded") return [{ bracket: bracket.id, along: bracket.along, out: bracket.out }];
  const onRamSide = bracket.face === "ramSide";
  const site = (name: string, position: Span, across: Span): PostPinSite =>
    onRamSide
      ? { bracket: name, along: position, out: moved(across, faces.ramSideOut) }
      : { bracket: name, along: moved(across, faces.gatewayAlong), out: position };
  const millimetres = (metres: number) => `${Math.round(metres * 1e4) / 10} mm`;
  switch (bracket.kind) {
    case "plate":
      return bracket.standOffs.map((standOff) =>
        site(`${bracket.id}, stand-off ${millimetres(standOff)}`, bracket.position, at(standOff)),
      );
    case "slotted":
      return [site(bracket.id, bracket.position, bracket.slot)];
    case "indexing":
      return bracket.angles.map((angle) => {
        const along = bracket.radius * Math.cos(angle);
        const out = bracket.radius * Math.sin(angle);
        const [slide, across] = onRamSide ? [along, out] : [out, along];
        const name = `${bracket.id}, locked at ${Math.round((angle * 1800) / Math.PI) / 10}°`;
        return site(name, moved(bracket.position, slide), at(bracket.boltStandOff + across));
      });
  }
}

/**
 * Every position that a leaf bracket allows on a leaf whose ram-side face is at `face` [m] (rule G13).
 *
 * ### Example
 *   const bracket = { id: "B", standOffs: [0.06, 0.1], members: [{ from: 0.9, to: 1, step: null }] };
 *   expect(leafPinSites(bracket, 0.025).map((site) => Math.round(site.off.from * 1000))).toEqual([85, 125]);
 */
export function leafPinSites(bracket: LeafBracket, face: number): LeafPinSite[] {
  return bracket.standOffs.flatMap((standOff) =>
    bracket.members.map((member) => ({ bracket: bracket.id, along: member, off: at(face + standOff) })),
  );
}
