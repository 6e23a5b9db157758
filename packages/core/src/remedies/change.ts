import type { Reach } from "../placement/reach.ts";
import type { Situation } from "../placement/situation.ts";
import { withPocket } from "./pocket.ts";

/** The single changes that may make a placement fit (rule G16). */
export type ChangeKind =
  | "stroke"
  | "retractedLength"
  | "leafPinOff"
  | "postPocket"
  | "postPinOut"
  | "openAngle"
  | "clearance";

/** What is searched: a situation and where its pins may go. */
export interface Problem {
  readonly situation: Situation;
  readonly reach: Reach;
}

/** One direction of one kind of change: how far it may go, and what it does by a signed amount. */
export interface Change {
  readonly kind: ChangeKind;
  readonly unit: "m" | "rad";
  /** +1 or −1: the sign of the amounts tried. */
  readonly sign: 1 | -1;
  /** Largest amount worth proposing. */
  readonly most: number;
  /** Which fixed thing a pocket is cut into. */
  readonly thing: string | null;
  apply(problem: Problem, by: number): Problem;
}

const change = (
  kind: ChangeKind,
  sign: 1 | -1,
  most: number,
  apply: Change["apply"],
  unit: Change["unit"] = "m",
  thing: string | null = null,
): Change => ({ kind, unit, sign, most, thing, apply });

/**
 * Every change that can be tried on a problem, in a fixed order.
 *
 * What each does, so that anyone can repeat it: `stroke` and `retractedLength` add to the ram's figure (its
 * tube stays); `leafPinOff` and `postPinOut` let every site's off or out range end that much further;
 * `postPocket` cuts a pocket that deep into the thing's ram-side face and lets the out range begin that much
 * lower; `openAngle` and `clearance` (to the leaf) are lowered.
 */
export function changesFor(problem: Problem): Change[] {
  const { situation } = problem;
  const { ram, leaf, need } = situation;
  const withRam =
    (part: Partial<typeof ram>) =>
    (p: Problem): Problem => ({
      ...p,
      situation: { ...p.situation, ram: { ...p.situation.ram, ...part } },
    });
  const shortest = Math.max(0, ...ram.tube.map((section) => section.to));
  const pockets = situation.fixed.map((thing) => {
    const faces = thing.outline.map((corner) => corner.y);
    const depth = Math.max(...faces) - Math.min(...faces);
    return change(
      "postPocket",
      1,
      0.9 * depth,
      (p, by) => ({
        situation: {
          ...p.situation,
          fixed: p.situation.fixed.map((other) =>
            other.name === thing.name ? withPocket(other, by) : other,
          ),
        },
        reach: {
          ...p.reach,
          postPin: p.reach.postPin.map((site) => ({
            ...site,
            out: { ...site.out, from: site.out.from - by, step: null },
          })),
        },
      }),
      "m",
      thing.name,
    );
  });
  return [
    change("stroke", 1, 1, (p, by) => withRam({ stroke: ram.stroke + by })(p)),
    change("retractedLength", -1, Math.max(0, ram.retracted - shortest), (p, by) =>
      withRam({ retracted: ram.retracted + by })(p),
    ),
    change("retractedLength", 1, 1, (p, by) => withRam({ retracted: ram.retracted + by })(p)),
    change("leafPinOff", 1, 0.4, (p, by) => ({
      ...p,
      reach: {
        ...p.reach,
        leafPin: p.reach.leafPin.map((site) => ({
          ...site,
          off: { ...site.off, to: site.off.to + by, step: null },
        })),
      },
    })),
    ...pockets,
    change("postPinOut", 1, 0.5, (p, by) => ({
      ...p,
      reach: {
        ...p.reach,
        postPin: p.reach.postPin.map((site) => ({
          ...site,
          out: { ...site.out, to: site.out.to + by, step: null },
        })),
      },
    })),
    change(
      "openAngle",
      -1,
      0.9 * leaf.travel.openAngle,
      (p, by) => {
        const { leaf } = p.situation;
        const travel = { ...leaf.travel, openAngle: leaf.travel.openAngle + by };
        return { ...p, situation: { ...p.situation, leaf: { ...leaf, travel } } };
      },
      "rad",
    ),
    change("clearance", -1, need.clearance, (p, by) => ({
      ...p,
      situation: { ...p.situation, need: { ...need, clearance: need.clearance + by } },
    })),
  ];
}
