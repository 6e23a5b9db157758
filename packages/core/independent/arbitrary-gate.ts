import fc from "fast-check";
import type { FixedThing, Leaf, Need, Placement, Ram, Situation, Travel } from "../src/index.ts";
import { clearanceChecks, leastGap, leastLever, leastThrustAngle, lengthRange } from "../src/index.ts";

/** Any number between two bounds, to a millionth of the range: shrinks well and never meets -0 or subnormals. */
export const between = (from: number, to: number): fc.Arbitrary<number> =>
  fc.integer({ min: 0, max: 1_000_000 }).map((part) => from + ((to - from) * part) / 1_000_000);

export const arbitraryTravel: fc.Arbitrary<Travel> = fc.record({
  swing: fc.constantFrom("toward" as const, "away" as const),
  openAngle: between(0.6, 2.2),
});

const arbitraryRise = fc.oneof(fc.constant(0), between(-0.2, 0.2));

/** Pins anywhere, sensible or not: for laws that hold for every linkage. */
export const anyPlacement: fc.Arbitrary<Placement> = fc.record({
  postPin: fc.record({ along: between(-0.6, 0.6), out: between(-0.6, 0.6) }),
  leafPin: fc.record({ along: between(0.1, 1.5), off: between(-0.4, 0.4) }),
  rise: arbitraryRise,
});

/** Pins where a person would put them. */
const usualPlacement: fc.Arbitrary<Placement> = fc.record({
  postPin: fc.record({ along: between(-0.35, -0.05), out: between(0.05, 0.35) }),
  leafPin: fc.record({ along: between(0.5, 1.3), off: between(0.06, 0.2) }),
  rise: arbitraryRise,
});

const at = (x: number, y: number) => ({ x, y });

/** Outlines about the origin: a square pier, a thin plate, a triangle, an angle (not convex) and a star (not convex). */
export const arbitraryOutline: fc.Arbitrary<FixedThing["outline"]> = fc
  .record({
    kind: fc.constantFrom("pier", "plate", "triangle", "angle", "star"),
    width: between(0.05, 0.4),
    depth: between(0.05, 0.4),
    turn: between(-0.7, 0.7),
    reversed: fc.boolean(),
  })
  .map(({ kind, width: w, depth: d, turn, reversed }) => {
    const corners = {
      pier: [at(0, 0), at(w, 0), at(w, d), at(0, d)],
      plate: [at(0, 0), at(w, 0), at(w, 0.008), at(0, 0.008)],
      triangle: [at(0, 0), at(w, 0.2 * d), at(0.3 * w, d)],
      angle: [at(0, 0), at(w, 0), at(w, 0.3 * d), at(0.3 * w, 0.3 * d), at(0.3 * w, d), at(0, d)],
      star: [
        at(0, 0),
        at(0.5 * w, 0.2 * d),
        at(w, 0),
        at(0.8 * w, 0.5 * d),
        at(w, d),
        at(0.5 * w, 0.8 * d),
        at(0, d),
        at(0.2 * w, 0.5 * d),
      ],
    }[kind];
    if (corners === undefined) throw new Error(`a known kind expected, ${kind} found`);
    const turned = corners.map(({ x, y }) =>
      at(x * Math.cos(turn) - y * Math.sin(turn), x * Math.sin(turn) + y * Math.cos(turn)),
    );
    return reversed ? turned.reverse() : turned;
  });

/** Zero to two things beside the gate, on either side of where the ram lies. */
const arbitraryFixed: fc.Arbitrary<FixedThing[]> = fc
  .array(
    fc
      .record({ outline: arbitraryOutline, x: between(-0.7, 0.3), y: between(-0.7, 0.6) })
      .map(({ outline, x, y }) => outline.map((corner) => at(corner.x + x, corner.y + y))),
    { maxLength: 2 },
  )
  .map((outlines) => outlines.map((outline, i) => ({ name: `thing ${i + 1}`, outline })));

const arbitraryLeaf = (travel: fc.Arbitrary<Travel> = arbitraryTravel): fc.Arbitrary<Leaf> =>
  fc
    .record({
      heel: between(0, 0.1),
      length: between(1.6, 4.5),
      thickness: between(0.02, 0.09),
      face: between(-0.04, 0.05),
      rail: fc.option(
        fc.record({ from: between(0.1, 0.9), width: between(0.02, 0.4), proud: between(0.003, 0.04) }),
      ),
      travel,
    })
    .map(({ rail, ...leaf }) => ({
      ...leaf,
      boxes:
        rail === null
          ? []
          : [
              {
                alongFrom: rail.from,
                alongTo: rail.from + rail.width,
                offFrom: leaf.face,
                offTo: leaf.face + rail.proud,
              },
            ],
    }));

const arbitraryTube = fc
  .record({
    tail: between(0, 0.12),
    share: between(0.45, 0.8),
    half: between(0.015, 0.06),
    motor: fc.boolean(),
  })
  .map(({ tail, share, half, motor }) => (retracted: number) => {
    const tube = [{ from: -tail, to: share * retracted, halfWidth: half }];
    // A motor housing is short and wider than the tube.
    return motor ? [...tube, { from: -tail, to: 0.2 * retracted, halfWidth: half + 0.02 }] : tube;
  });

/** A situation and a placement in it, in no way fitted to each other: many limits will be broken. */
export const anySituation: fc.Arbitrary<{ situation: Situation; placement: Placement }> = fc
  .record({
    leaf: arbitraryLeaf(),
    fixed: arbitraryFixed,
    tube: arbitraryTube,
    rodHalfWidth: between(0.006, 0.02),
    placement: usualPlacement,
    retracted: between(0.5, 0.95),
    stroke: between(0.2, 0.6),
    clearance: between(0, 0.06),
    lever: between(0, 0.15),
  })
  .map(({ leaf, fixed, tube, rodHalfWidth, placement, retracted, stroke, clearance, lever }) => ({
    situation: {
      leaf,
      fixed,
      ram: madeUpRam({ retracted, stroke, tube: tube(retracted), rodHalfWidth }),
      need: { clearance, fixedClearance: 0.015, lever, deadCentre: 0.05, sweep: -10 },
    },
    placement,
  }));

function madeUpRam(numbers: Pick<Ram, "retracted" | "stroke" | "tube" | "rodHalfWidth">): Ram {
  return {
    id: "made-up ram",
    retractedMargin: 0,
    extendedMargin: 0,
    speed: null,
    thrust: null,
    longestLeaf: null,
    heaviestLeaf: null,
    ...numbers,
  };
}

/**
 * A situation that a placement is sure to fit: pins first, then a ram, needs and things with drawn room to
 * spare. Gaps that the drawn pins do not leave end the draw (`null`, filtered out).
 */
export const fittedSituation: fc.Arbitrary<{ situation: Situation; placement: Placement }> = fc
  .record({
    leaf: arbitraryLeaf(),
    fixed: arbitraryFixed,
    tube: arbitraryTube,
    rodHalfWidth: between(0.006, 0.015),
    placement: usualPlacement,
    spare: fc.record({
      retracted: between(0.001, 0.06),
      extended: between(0.001, 0.06),
      lever: between(0.001, 0.05),
      clearance: between(0.001, 0.06),
      fixedClearance: between(0.001, 0.06),
    }),
  })
  .map(({ leaf, fixed, tube, rodHalfWidth, placement, spare }) => {
    const range = lengthRange(placement, leaf.travel);
    const thrustAngle = leastThrustAngle(placement, leaf.travel).value;
    if (!range.monotonic || thrustAngle < 0.03) return null;
    const retracted = range.least - spare.retracted;
    const stroke = range.greatest + spare.extended - retracted;
    if (retracted < 0.25) return null;
    const ram = madeUpRam({ retracted, stroke, tube: tube(retracted), rodHalfWidth });
    const need: Need = {
      clearance: 0,
      fixedClearance: 0,
      lever: Math.max(0, leastLever(placement, leaf.travel).value - spare.lever),
      deadCentre: Math.min(0.08, 0.9 * thrustAngle),
      sweep: -10,
    };
    const gaps = clearanceChecks({ leaf, ram, fixed, need }).map((check) => ({
      id: check.id,
      gap: leastGap(check, placement, leaf.travel)?.gap ?? Number.POSITIVE_INFINITY,
    }));
    if (gaps.some(({ gap }) => gap <= 1e-4)) return null;
    const leastOf = (wanted: (id: string) => boolean) =>
      Math.min(...gaps.filter(({ id }) => wanted(id)).map(({ gap }) => gap));
    const toLeaf = leastOf((id) => id === "clearance.leaf");
    const toFixed = leastOf((id) => id.startsWith("clearance.thing"));
    const asked = (gap: number, room: number) =>
      gap === Number.POSITIVE_INFINITY ? 0 : Math.max(0, Math.min(0.2, gap - room));
    const fittedNeed = {
      ...need,
      clearance: asked(toLeaf, spare.clearance),
      fixedClearance: asked(toFixed, spare.fixedClearance),
    };
    return { situation: { leaf, ram, fixed, need: fittedNeed }, placement };
  })
  .filter((drawn) => drawn !== null);
