import type { ClearanceCheck } from "../src/clearance/clearance-check.ts";
import type { Placement } from "../src/linkage/pins.ts";
import { turnSign } from "../src/linkage/pins.ts";
import type { Prepared } from "../src/placement/limits.ts";
import { leastDeadCentre } from "../src/placement/limits.ts";
import type { Reach } from "../src/placement/reach.ts";
import { pinsOf } from "../src/placement/reserve.ts";

/** Order of the roles in c/model.h. */
function roleOf(check: ClearanceCheck): number {
  return check.id === "clearance.leaf" ? 0 : check.id === "rod.contact" ? 2 : 1;
}

/**
 * A prepared situation, a plain reach and placements as numbers, in the order that c/read-case.c reads. The
 * C port, too, starts from outlines that are worked out already.
 */
export function caseAsNumbers(prepared: Prepared, reach: Reach, placements: readonly Placement[]): string {
  const { leaf, ram, need } = prepared.situation;
  const post = reach.postPin[0];
  const onLeaf = reach.leafPin[0];
  if (post === undefined || onLeaf === undefined || reach.postPin.length > 1 || reach.leafPin.length > 1) {
    throw new RangeError("reach: expected one site for each pin");
  }
  const spans = [post.along, post.out, onLeaf.along, onLeaf.off];
  const ids = [...new Set(prepared.checks.map((check) => check.id))];
  const numbers: number[] = [
    turnSign(leaf.travel),
    leaf.travel.openAngle,
    ram.retracted + ram.retractedMargin,
    ram.retracted + ram.stroke - ram.extendedMargin,
    ram.retracted,
    need.lever,
    leastDeadCentre(need),
    need.sweep,
    reach.rise,
    ram.speed ?? 0,
    leaf.length,
    ...spans.map((span) => span.from),
    ...spans.map((span) => span.to),
    prepared.sweeps.length,
    ...prepared.sweeps.map((sweep) => sweep.gap),
    ids.length,
    prepared.checks.length,
  ];
  for (const check of prepared.checks) {
    numbers.push(ids.indexOf(check.id), roleOf(check), check.need, Number(check.inLeafFrame));
    numbers.push(check.sections.length);
    for (const { from, to, halfWidth, toCountsFromLeafPin } of check.sections) {
      numbers.push(from, to, halfWidth, Number(toCountsFromLeafPin));
    }
    numbers.push(check.outlines.length);
    for (const { count, x, y, nx, ny, offset, edge } of check.outlines) {
      numbers.push(count);
      for (let i = 0; i < count; i++) {
        for (const list of [x, y, nx, ny, offset, edge]) numbers.push(list[i] as number);
      }
    }
  }
  numbers.push(placements.length, ...placements.flatMap((one) => [...pinsOf(one)]));
  return `${numbers.join(" ")}\n`;
}
