import type { Contact } from "../clearance/ram-gap.ts";
import type { RamPose } from "../clearance/ram-pose.ts";

/** How far the pins may move from where a contact was found: post pin, leaf pin, and both together [m]. */
export interface PinMoves {
  readonly post: number;
  readonly leaf: number;
  readonly both: number;
}

/**
 * How much a gap may exceed its own tangent when the pins move within `moves` [m]; Infinity when nothing can
 * be promised. For a contact in `overlap` no tangent is promised: the gap stays below its value plus this.
 *
 * Why it holds. The gap is at most the distance from one corner K of the one body to the other body, whichever
 * corner is taken. While the foot of K stays within its edge that distance is a coordinate of K; beyond the
 * edge's end by b it grows by at most b²/2a (and by no more than b). K itself leaves its tangent by no more
 * than the bend of the ram's direction: the second derivative of v/|v| is at most 1.2/|v|².
 */
export function gapCeilingExcess(pose: RamPose, contact: Contact, moves: PinMoves): number {
  const shortest = pose.plan - moves.both;
  if (shortest <= 0) return Number.POSITIVE_INFINITY;
  const rod = contact.section;
  // A rod that some placements in reach keep inside the tube has no gap there at all.
  if (rod?.toCountsFromLeafPin && pose.length - rod.from - rod.to <= moves.both) return Number.POSITIVE_INFINITY;
  const turn = moves.both / shortest;
  const bend = (0.6 * moves.both * moves.both) / (shortest * shortest);
  const station = contact.onRodEnd ? pose.plan - contact.station : contact.station;
  const anchorMove = contact.onRodEnd ? moves.leaf : moves.post;
  const arm = Math.abs(station) + Math.abs(contact.lateral);
  const drift = anchorMove + arm * turn;
  const overhang = (slide: number) => {
    const beyond = Math.max(0, slide - Math.max(0, contact.spare));
    return Math.min(beyond, (beyond * beyond) / (2 * Math.max(contact.gap, 1e-9)));
  };
  switch (contact.feature) {
    case "outlineEdge":
      return arm * bend + overhang(drift);
    case "corners":
      return arm * bend + Math.min(2 * drift, (drift * drift) / (2 * Math.max(contact.gap, 1e-9)));
    case "ramSide":
    case "ramEnd": {
      // Now the outline's corner is followed in the ram's axes, which move and turn; a rod end slides too.
      const away = arm + contact.gap;
      const slideBend = contact.onRodEnd ? (moves.both * moves.both) / (2 * shortest) : 0;
      return away * bend + moves.post * turn + slideBend + overhang(moves.post + away * turn);
    }
    case "overlap": {
      const section = contact.section;
      if (section === null) return Number.POSITIVE_INFINITY;
      const reach = Math.max(Math.abs(section.from), Math.abs(section.to)) + section.halfWidth;
      return Math.max(moves.post, moves.leaf) + reach * turn;
    }
  }
}
