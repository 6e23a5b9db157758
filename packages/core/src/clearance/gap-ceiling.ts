import type { ConvexOutline } from "./outline.ts";
import type { Contact, RamSection } from "./ram-gap.ts";
import type { RamPose } from "./ram-pose.ts";

/** How far the pins may move from where a contact was found: post pin, leaf pin, and both together [m]. */
export interface PinMoves {
  readonly post: number;
  readonly leaf: number;
  readonly both: number;
}

/** What the moves can do to the ram as a whole. */
interface RamMoves extends PinMoves {
  /** Least plan distance that the pins can come to [m]. */
  readonly shortest: number;
  /** How far the ram's unit direction moves, and how far it leaves its tangent. */
  readonly turn: number;
  readonly bend: number;
  /** The same of the ratio plan ÷ true length, which a rise makes change. */
  readonly stretch: number;
  readonly stretchBend: number;
}

/**
 * How much a gap may exceed its own tangent when the pins move within `moves` [m], as long as the two bodies
 * stay parted; Infinity when nothing can be promised. (Once they overlap no ceiling is needed: the clearance
 * is broken.) For a contact in `overlap` no tangent is promised: the gap stays below its value plus this.
 *
 * Why it holds. The gap is at most the distance from one corner K of the one body to the other body, whichever
 * corner is taken. K's height over the other's edge leaves its tangent by no more than the bend of the ram's
 * direction (the second derivative of v/|v| is at most 1.2/|v|²), and `overhang` bounds by how much the
 * distance may exceed the height.
 */
export function gapCeilingExcess(pose: RamPose, contact: Contact, moves: PinMoves): number {
  const { section, outline, feature, gap } = contact;
  const shortest = pose.plan - moves.both;
  if (shortest <= 0 || section === null || outline === null) return Number.POSITIVE_INFINITY;
  // A rod that some placements in reach keep inside the tube has no gap there at all.
  const rod = section.toCountsFromLeafPin;
  if (rod && pose.length - section.from - section.to <= moves.both) return Number.POSITIVE_INFINITY;
  const ram = ramMoves(pose, moves, shortest);
  const fromLeafPin = pose.plan - contact.station;
  const station = contact.onRodEnd ? fromLeafPin : contact.station;
  switch (feature) {
    case "outlineEdge":
    case "corners": {
      const slide = pointMove(ram, station, contact.lateral, contact.onRodEnd);
      const bent = (Math.abs(station) + Math.abs(contact.lateral)) * ram.bend;
      if (feature === "corners") return bent + overhang(gap, slide, 0, 0);
      const depth = slide > gap ? depthUnderFoot(pose, contact, outline, Math.min(contact.spare, slide)) : 0;
      return bent + overhang(gap, slide, contact.spare, depth);
    }
    case "ramSide": {
      // The outline's corner is followed in the ram's axes, which move and turn about either pin.
      const away = (from: number) => Math.abs(from) + section.halfWidth + gap;
      const [toPost, toLeaf] = [away(contact.station), away(fromLeafPin)];
      const bent = Math.min(
        toPost * ram.bend + moves.post * ram.turn,
        toLeaf * ram.bend + moves.leaf * ram.turn,
      );
      const ends = Math.max(Math.abs(section.from), Math.abs(section.to)) * ram.stretch;
      const slide = moves.post + toPost * ram.turn;
      const slideOfFarEnd = rod ? moves.leaf + toLeaf * ram.turn : 0;
      return (
        bent + overhang(gap, Math.max(slide, slideOfFarEnd) + ends, contact.spare, 2 * section.halfWidth)
      );
    }
    case "ramEnd": {
      const anchor = contact.onRodEnd ? moves.leaf : moves.post;
      const raw = (Math.abs(station) * pose.length) / pose.plan;
      const away = Math.abs(station) + Math.abs(contact.lateral) + gap;
      const bent = away * ram.bend + anchor * ram.turn + raw * ram.stretchBend;
      const slide = anchor + away * ram.turn + raw * ram.stretch;
      return bent + overhang(gap, slide, contact.spare, leastLength(section, pose, ram));
    }
    case "overlap":
      return greatestMove(section, ram);
  }
}

function ramMoves(pose: RamPose, { post, leaf, both }: PinMoves, shortest: number): RamMoves {
  const rise2 = pose.rise * pose.rise;
  const trueShortest = Math.sqrt(shortest * shortest + rise2);
  const cube = trueShortest * trueShortest * trueShortest;
  return {
    post,
    leaf,
    both,
    shortest,
    turn: both / shortest,
    bend: (0.6 * both * both) / (shortest * shortest),
    stretch: (both * rise2) / cube,
    stretchBend: (1.5 * both * both * rise2) / (cube * shortest),
  };
}

/**
 * How far a point of the ram can move [m]. A point λ of the way from its own pin to the other takes at most
 * all of its own pin's move and λ of the other's, and what its lateral distance adds when the ram turns.
 */
function pointMove(ram: RamMoves, station: number, lateral: number, fromLeafPin: boolean): number {
  const [own, other] = fromLeafPin ? [ram.leaf, ram.post] : [ram.post, ram.leaf];
  const share = station / ram.shortest;
  return own * Math.max(1, Math.abs(1 - share)) + Math.abs(share) * other + Math.abs(lateral) * ram.turn;
}

function greatestMove(section: RamSection, ram: RamMoves): number {
  const near = pointMove(ram, section.from, section.halfWidth, false);
  return Math.max(near, pointMove(ram, section.to, section.halfWidth, section.toCountsFromLeafPin));
}

/** Length in plan that a section keeps whatever the moves. */
function leastLength(section: RamSection, pose: RamPose, ram: RamMoves): number {
  const scale = ram.shortest / Math.hypot(ram.shortest, pose.rise);
  if (!section.toCountsFromLeafPin) return (section.to - section.from) * scale;
  return Math.max(0, ram.shortest - section.from - section.to);
}

/** How deep the outline is, along the contact's normal, under the foot and up to `room` beside it. */
function depthUnderFoot(pose: RamPose, contact: Contact, outline: ConvexOutline, room: number): number {
  const { nx, ny, station, lateral, gap } = contact;
  const footX = pose.ax + station * pose.ux - lateral * pose.uy - nx * gap;
  const footY = pose.ay + station * pose.uy + lateral * pose.ux - ny * gap;
  let depth = Number.POSITIVE_INFINITY;
  for (let i = 0; i < outline.count; i++) {
    const mx = outline.nx[i] as number;
    const my = outline.ny[i] as number;
    const facing = -(mx * nx + my * ny);
    if (facing <= 1e-9) continue;
    // The corner of [−room, room] beside the foot that is nearer to this far edge.
    const beside = Math.abs(my * nx - mx * ny) * room;
    depth = Math.min(depth, ((outline.offset[i] as number) - mx * footX - my * footY - beside) / facing);
  }
  return Math.max(0, depth);
}

/**
 * By how much the distance of a corner to a body may exceed its height over the body's edge, when it starts
 * at `height`, its foot at least `spare` inside the edge's ends, and moves by up to `slide`; the body is
 * `depth` thick under the edge.
 *
 * Three ways: past an end of the edge by b, where the distance is √(height'² + b²); through the body and out
 * at the back, where the height is negative and the distance is not; and never more than measured to the foot
 * where it started, which gives slide²/2·height, or 2(slide − height) for long slides.
 */
function overhang(height: number, slide: number, spare: number, depth: number): number {
  const room = Math.max(0, spare);
  const toFoot = slide <= 2 * height ? (slide * slide) / (2 * height) : 2 * (slide - height);
  const through = slide > height + depth ? 2 * (slide - height) - depth : 0;
  let beside = 0;
  if (slide > room) {
    const beyond = slide - room;
    // The height can fall by no more than this once the foot has gone as far as the end.
    const left = height - Math.sqrt(slide * slide - room * room);
    beside = left > 0 ? Math.min(beyond, (beyond * beyond) / (2 * left)) : beyond - 2 * left;
  }
  return Math.min(toFoot, Math.max(beside, through));
}
