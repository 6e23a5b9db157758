import { describe, expect, test } from "vitest";
import type { Placement } from "../linkage/pins.ts";
import type { Limit } from "../placement/limit.ts";
import { limitsOf, prepare } from "../placement/limits.ts";
import { defaultNeed, type Situation } from "../placement/situation.ts";
import { madeUpGate } from "./made-up-gate.ts";
import { type Mend, type PinMend, smallestMend } from "./mend.ts";

const situation: Situation = {
  leaf: madeUpGate("toward").leaf,
  ram: {
    id: "invented-400",
    retracted: 0.76,
    stroke: 0.4,
    retractedMargin: 0,
    extendedMargin: 0,
    tube: [{ from: -0.06, to: 0.56, halfWidth: 0.045 }],
    rodHalfWidth: 0.012,
    speed: null,
    thrust: null,
    longestLeaf: null,
    heaviestLeaf: null,
  },
  fixed: [],
  need: { ...defaultNeed, lever: 0.12 },
};
const pins: Placement = {
  postPin: { along: -0.15, out: 0.15 },
  leafPin: { along: 0.9072, off: 0.085 },
  rise: 0,
};

function made(id: string, slack: number, unit: Limit["unit"] = "m"): Limit {
  const state = slack >= 0 ? "pass" : "fail";
  return { id, state, unit, value: slack, limit: 0, slack, atAngle: null, where: null };
}

function needed(mend: Mend) {
  if (mend.kind !== "needed") throw new Error("a mend expected");
  return mend;
}

function move(mend: PinMend) {
  if (mend.kind !== "move") throw new Error(`a move expected, ${mend.kind} found`);
  return mend;
}

describe("the smallest move of one pin, on limits made for the purpose", () => {
  test("[G18] nothing broken, nothing to mend; what was not checked is told", () => {
    const unknown: Limit = {
      ...made("force", 0),
      state: "not-checked",
      value: null,
      limit: null,
      slack: null,
    };
    expect(smallestMend(situation, pins, () => [made("lever", 0.01), unknown])).toEqual({
      kind: "notNeeded",
      notChecked: ["force"],
    });
  });

  test("[G18] to a straight edge it goes square", () => {
    // By hand: 30 mm short of an edge that faces 3-4: (0.6, 0.8) × 30 mm.
    const mend = needed(
      smallestMend(situation, pins, (_, { postPin }) => [
        made(
          "edge",
          0.6 * (postPin.along - pins.postPin.along) + 0.8 * (postPin.out - pins.postPin.out) - 0.03,
        ),
      ]),
    );
    const { distance, along, across } = move(mend.postPin);
    expect(Math.abs(distance - 0.03)).toBeLessThan(1e-4);
    expect(Math.abs(along - 0.018)).toBeLessThan(2e-3);
    expect(Math.abs(across - 0.024)).toBeLessThan(2e-3);
    expect(mend.leafPin).toEqual({ kind: "none", radius: 0.15, always: ["edge"] });
  });

  test("[G18] into the corner of two edges, from a limit that is not a length as well", () => {
    // By hand: along must grow by 40 mm and across by 30 mm: 50 mm.
    const mend = needed(
      smallestMend(situation, pins, (_, { leafPin }) => [
        made("one", leafPin.along - pins.leafPin.along - 0.04),
        made("force", 7 * (leafPin.off - pins.leafPin.off - 0.03), "ratio"),
      ]),
    );
    expect(Math.abs(move(mend.leafPin).distance - 0.05)).toBeLessThan(1e-4);
    expect(mend.failing).toEqual(["one", "force"]);
  });

  test("[G18] of two places that mend it, the nearer one, though the farther is much larger", () => {
    const island = (x: number, y: number, radius: number, p: Placement): number =>
      radius - Math.hypot(p.postPin.along - pins.postPin.along - x, p.postPin.out - pins.postPin.out - y);
    const mend = needed(
      smallestMend(situation, pins, (_, p) => [
        made("islands", Math.max(island(-0.06, 0, 0.002, p), island(0.11, 0, 0.04, p)), "ratio"),
      ]),
    );
    // By hand: the small island's near shore is at 58 mm, the large one's at 70 mm.
    expect(Math.abs(move(mend.postPin).distance - 0.058)).toBeLessThan(1e-4);
  });

  test("[G18] beyond the radius it is no mend", () => {
    const far = (_: Situation, p: Placement) => [made("far", p.postPin.out - pins.postPin.out - 0.16)];
    expect(needed(smallestMend(situation, pins, far)).postPin.kind).toBe("none");
    expect(needed(smallestMend(situation, pins, far, { radius: 0.2 })).postPin.kind).toBe("move");
  });

  test("[G18] it can be stopped, and says how far it had looked", () => {
    const never = () => [made("force", -1, "ratio")];
    const signal = { aborted: false };
    const seen: number[] = [];
    const stopped = smallestMend(situation, pins, never, {
      signal,
      progress: (pin, searchedTo) => {
        if (pin === "postPin") seen.push(searchedTo);
        signal.aborted = seen.length > 20;
      },
    });
    expect(needed(stopped).postPin).toMatchObject({ kind: "stopped", reason: "aborted" });
    expect(seen).toEqual([...seen].sort((a, b) => a - b));
    const limited = needed(smallestMend(situation, pins, never, { probeLimit: 500 })).postPin;
    expect(limited).toMatchObject({ kind: "stopped", reason: "probeLimit" });
  });
});

describe("the smallest move of one pin, on the real limits", { timeout: 60_000 }, () => {
  const holdsAt = (judged: Situation) => {
    const prepared = prepare(judged);
    return (placement: Placement): boolean =>
      limitsOf(prepared, placement).every(({ state }) => state !== "fail");
  };

  test.each([
    ["the clearance that the check values show short", pins],
    ["a post pin set too near the gateway", { ...pins, postPin: { along: -0.12, out: 0.17 } }],
    [
      "a leaf pin set too far out",
      { ...pins, postPin: { along: -0.2, out: 0.16 }, leafPin: { along: 0.97, off: 0.085 } },
    ],
  ])(
    "[G18] %s: agrees with a blind scan of the disc, holds there, and a twentieth less does not do",
    (_, placement) => {
      const holds = holdsAt(situation);
      const prepared = prepare(situation);
      const mend = needed(
        smallestMend(situation, placement, (_situation, tried) => limitsOf(prepared, tried)),
      );
      let moves = 0;
      for (const pin of ["postPin", "leafPin"] as const) {
        const at = (x: number, y: number): Placement =>
          pin === "postPin"
            ? {
                ...placement,
                postPin: { along: placement.postPin.along + x, out: placement.postPin.out + y },
              }
            : {
                ...placement,
                leafPin: { along: placement.leafPin.along + x, off: placement.leafPin.off + y },
              };
        const found = mend[pin];
        const reached = found.kind === "move" ? found.distance : 0.15;
        // Rings 2 mm apart and points 2 mm apart on them, from the middle out to just short of the answer: none may do.
        for (let r = 0.002; r < reached - 1e-4; r += 0.002) {
          const steps = Math.ceil((2 * Math.PI * r) / 0.002);
          for (let k = 0; k < steps; k++) {
            const angle = (2 * Math.PI * k) / steps;
            if (holds(at(r * Math.cos(angle), r * Math.sin(angle))))
              throw new Error(`${pin} mended already at ${r} m`);
          }
        }
        if (found.kind !== "move") continue;
        moves++;
        expect(holds(found.placement)).toBe(true);
        expect(holds(at(0.95 * found.along, 0.95 * found.across))).toBe(false);
        expect(Math.hypot(found.along, found.across)).toBeCloseTo(found.distance, 12);
      }
      expect(moves).toBeGreaterThan(0);
    },
  );

  test("[G18] a lever that no small move can give: neither pin mends it, and the lever is named", () => {
    const wanting = { ...situation, need: { ...situation.need, lever: 0.3 } };
    const mend = needed(smallestMend(wanting, pins, limitsOf));
    expect(mend.postPin).toMatchObject({ kind: "none", always: ["lever"] });
    expect(mend.leafPin).toMatchObject({ kind: "none", always: ["lever"] });
  });
});
