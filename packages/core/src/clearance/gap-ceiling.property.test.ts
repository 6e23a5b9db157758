import fc from "fast-check";
import { expect, test, vi } from "vitest";
import { anyPlacement, anySituation, arbitraryOutline, between } from "../../independent/arbitrary-gate.ts";
import type { Placement } from "../linkage/pins.ts";
import { turnSign } from "../linkage/pins.ts";
import { prepare } from "../placement/limits.ts";
import { pinsOf } from "../placement/reserve.ts";
import { newSlope, orientationOf } from "../placement/slack-function.ts";
import { slackFunctions } from "../placement/slack-functions.ts";
import { gapCeilingExcess } from "./gap-ceiling.ts";
import { gapSlope } from "./gap-slope.ts";
import { nearestContact } from "./least-gap.ts";
import { convexPieces } from "./outline.ts";
import { newContact } from "./ram-gap.ts";
import type { RamPose } from "./ram-pose.ts";
import { newPose, poseInFixedFrame, poseInLeafFrame } from "./ram-pose.ts";

// Many draws on a machine that may be busy: slow is no failure.
vi.setConfig({ testTimeout: 120_000 });

// The proof of the search rests on these ceilings, so they are tried hard: any gate, any turn, moves from a
// millimetre to 400 mm, moves on the rim of what is allowed as often as inside it.

const unit = between(-1, 1);
const share = fc.oneof(fc.constantFrom(0, 1), between(0, 1));
const rounding = 1e-9;

/** A move of the pins within `post` and `leaf`, from four numbers in −1 … 1; long ones are drawn in to the rim. */
function moveWithin(post: number, leaf: number, [a, b, c, d]: readonly [number, number, number, number]) {
  const rim = (x: number, y: number) => Math.max(1, Math.hypot(x, y));
  const [p, l] = [post / rim(a, b), leaf / rim(c, d)];
  return [a * p, b * p, c * l, d * l];
}

const drawn = fc.record({
  gate: anySituation,
  turn: share,
  post: between(0.001, 0.4),
  leaf: between(0.001, 0.4),
  moves: fc.array(fc.tuple(unit, unit, unit, unit), { minLength: 8, maxLength: 16 }),
});

const along = (slope: Float64Array, move: readonly number[]) =>
  move.reduce((sum, by, j) => sum + by * (slope[j] ?? Number.NaN), 0);

test("[G12] no slack exceeds its lifted tangent anywhere in the box, whichever limit", () => {
  const looks = new Map<string, number>();
  fc.assert(
    fc.property(drawn, ({ gate: { situation, placement }, turn, post, leaf, moves }) => {
      const pins = pinsOf(placement);
      const phi = turnSign(situation.leaf.travel) * turn * situation.leaf.travel.openAngle;
      const [c, s] = [Math.cos(phi), Math.sin(phi)];
      const slope = newSlope();
      const ignored = newSlope();
      for (const f of slackFunctions(prepare(situation), placement.rise, orientationOf(pins))) {
        for (const units of moves) {
          const slack = f.evaluate(pins, c, s, slope);
          const excess = f.excess({ post, leaf, both: post + leaf }, slope);
          if (slack === Number.POSITIVE_INFINITY || excess === Number.POSITIVE_INFINITY) continue;
          const move = moveWithin(post, leaf, units);
          const moved = f.evaluate(
            pins.map((pin, j) => pin + (move[j] as number)),
            c,
            s,
            ignored,
          );
          looks.set(f.id, (looks.get(f.id) ?? 0) + 1);
          // A rod that was out may not promise anything about being in; that is what Infinity is for.
          if (moved >= 0 && moved > slack + along(slope, move) + excess + rounding) {
            throw new Error(`${f.id}: ${moved} > ${slack} + ${along(slope, move)} + ${excess}`);
          }
        }
      }
    }),
    { numRuns: 4000, seed: 12, endOnFailure: true },
  );
  for (const id of [
    "stroke.retracted",
    "stroke.extended",
    "lever",
    "deadCentre",
    "rod.contact",
    "clearance.leaf",
  ]) {
    expect(looks.get(id) ?? 0).toBeGreaterThan(10_000);
  }
});

/** A check of one section against one outline that was put beside it, so that every kind of contact comes up. */
const closeCheck = fc
  .record({
    placement: anyPlacement,
    outline: arbitraryOutline,
    inLeafFrame: fc.boolean(),
    rod: fc.boolean(),
    from: between(-0.1, 0.3),
    length: between(0.1, 0.6),
    halfWidth: between(0.005, 0.06),
    turn: between(-1.6, 1.6),
    beside: fc.record({ along: between(-0.3, 1.3), lateral: between(-0.5, 0.3), turn: between(-3.1, 3.1) }),
    post: between(0.001, 0.4),
    leaf: between(0.001, 0.4),
    moves: fc.array(fc.tuple(unit, unit, unit, unit), { minLength: 8, maxLength: 16 }),
  })
  .map(({ outline, rod, from, length, halfWidth, beside, ...rest }) => {
    const pose = newPose();
    put(pose, rest.placement, pinsOf(rest.placement), rest.turn, rest.inLeafFrame);
    const [c, s] = [Math.cos(beside.turn), Math.sin(beside.turn)];
    const corners = outline.map(({ x, y }) => {
      const along = beside.along * pose.plan + x * c - y * s;
      const lateral = beside.lateral + x * s + y * c;
      return {
        x: pose.ax + along * pose.ux - lateral * pose.uy,
        y: pose.ay + along * pose.uy + lateral * pose.ux,
      };
    });
    const to = rod ? 0.08 : from + length;
    const section = { from, to, toCountsFromLeafPin: rod, halfWidth };
    const { inLeafFrame } = rest;
    const check = { id: "close", need: 0, inLeafFrame, sections: [section], outlines: convexPieces(corners) };
    return { ...rest, check };
  });

function put(pose: RamPose, { rise }: Placement, pins: Float64Array, phi: number, inLeafFrame: boolean) {
  const [px, py, d, e] = pins as unknown as [number, number, number, number];
  const set = inLeafFrame ? poseInLeafFrame : poseInFixedFrame;
  set(pose, px, py, d, e, rise, Math.cos(phi), Math.sin(phi));
}

test("[G12] the ceiling of a gap holds for every kind of contact", () => {
  const kinds = new Map<string, number>();
  fc.assert(
    fc.property(closeCheck, ({ check, placement, turn, post, leaf, moves }) => {
      const pose = newPose();
      const contact = newContact();
      const pins = pinsOf(placement);
      put(pose, placement, pins, turn, check.inLeafFrame);
      nearestContact(pose, check, contact);
      if (contact.section === null) return;
      const slope = newSlope();
      gapSlope(pose, contact, check.inLeafFrame, Math.cos(turn), Math.sin(turn), slope);
      const excess = gapCeilingExcess(pose, contact, { post, leaf, both: post + leaf });
      if (excess === Number.POSITIVE_INFINITY) return;
      if (contact.feature === "overlap") slope.fill(0);
      const kind = `${contact.feature}${contact.onRodEnd ? " near the rod's end" : ""}`;
      for (const units of moves) {
        const move = moveWithin(post, leaf, units);
        const moved = newContact();
        put(
          pose,
          placement,
          pins.map((pin, j) => pin + (move[j] as number)),
          turn,
          check.inLeafFrame,
        );
        nearestContact(pose, check, moved);
        if (moved.section === null || moved.gap < 0) continue;
        kinds.set(kind, (kinds.get(kind) ?? 0) + 1);
        const ceiling = contact.gap + along(slope, move) + excess;
        if (moved.gap > ceiling + rounding) throw new Error(`${kind}: ${moved.gap} > ${ceiling}`);
      }
    }),
    { numRuns: 12_000, seed: 13, endOnFailure: true },
  );
  for (const kind of ["outlineEdge", "ramSide", "ramEnd", "corners", "overlap"]) {
    expect(kinds.get(kind) ?? 0, kind).toBeGreaterThan(100);
    expect(kinds.get(`${kind} near the rod's end`) ?? 0, kind).toBeGreaterThan(100);
  }
});
