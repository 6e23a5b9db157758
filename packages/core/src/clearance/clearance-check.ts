import type { Situation } from "../placement/situation.ts";
import type { ConvexOutline } from "./outline.ts";
import { boxOutline, convexPieces } from "./outline.ts";
import type { RamSection } from "./ram-gap.ts";

/** Rule G7: the rod's last stretch at the leaf pin lies in its bracket and does not count [m]. */
export const rodStretchAtLeafPin = 0.08;

/** One clearance to keep over the whole travel: these ram sections against these outlines, in one frame. */
export interface ClearanceCheck {
  /** `clearance.leaf`, `clearance.<thing>` or `rod.contact`. */
  readonly id: string;
  /** Least gap asked for [m]. */
  readonly need: number;
  readonly inLeafFrame: boolean;
  readonly sections: readonly RamSection[];
  readonly outlines: readonly ConvexOutline[];
}

/**
 * The clearances of a situation (rules G7, G10): tube to leaf, tube to each fixed thing, rod to everything.
 * `rod.contact` comes twice, once in the leaf's axes and once in the fixed frame.
 *
 * ### Example
 *   const checks = clearanceChecks(workedExample.situation);
 *   expect(checks.map((check) => check.id)).toEqual(["clearance.leaf", "rod.contact"]);
 */
export function clearanceChecks(situation: Situation): ClearanceCheck[] {
  const { leaf, ram, fixed, need } = situation;
  const tube: RamSection[] = ram.tube.map(({ from, to, halfWidth }) => ({
    from,
    to,
    toCountsFromLeafPin: false,
    halfWidth,
  }));
  const rod: RamSection[] = [
    {
      from: Math.max(0, ...ram.tube.map((section) => section.to)),
      to: rodStretchAtLeafPin,
      toCountsFromLeafPin: true,
      halfWidth: ram.rodHalfWidth,
    },
  ];
  const panel = {
    alongFrom: leaf.heel,
    alongTo: leaf.length,
    offFrom: leaf.face - leaf.thickness,
    offTo: leaf.face,
  };
  const onLeaf = [panel, ...leaf.boxes].flatMap(boxOutline);
  const things = fixed.map((thing) => ({ name: thing.name, outlines: convexPieces(thing.outline) }));
  const standing = things.flatMap((thing) => thing.outlines);
  const checks: ClearanceCheck[] = [
    { id: "clearance.leaf", need: need.clearance, inLeafFrame: true, sections: tube, outlines: onLeaf },
    ...things.map((thing) => ({
      id: `clearance.${thing.name}`,
      need: need.fixedClearance,
      inLeafFrame: false,
      sections: tube,
      outlines: thing.outlines,
    })),
    { id: "rod.contact", need: 0, inLeafFrame: true, sections: rod, outlines: onLeaf },
    { id: "rod.contact", need: 0, inLeafFrame: false, sections: rod, outlines: standing },
  ];
  return checks.filter((check) => check.sections.length > 0 && check.outlines.length > 0);
}
