import { describe, expect, test } from "vitest";
import type { Limit } from "./limit.ts";
import { leastDeadCentre, limitsOf, prepare } from "./limits.ts";
import { reserveOf } from "./reserve.ts";
import type { Situation } from "./situation.ts";
import { defaultNeed } from "./situation.ts";

const at = (x: number, y: number) => ({ x, y });
const situation: Situation = {
  leaf: {
    heel: 0.03,
    length: 3.6,
    thickness: 0.05,
    face: 0.025,
    boxes: [],
    travel: { swing: "toward", openAngle: Math.PI / 2 },
  },
  ram: {
    id: "made-up ram",
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
const pier = {
  name: "pier",
  outline: [at(-0.44, -0.215), at(-0.04, -0.215), at(-0.04, 0.07), at(-0.44, 0.07)],
};
const tight = { postPin: { along: -0.15, out: 0.15 }, leafPin: { along: 0.9072, off: 0.085 }, rise: 0 };

const byId = (limits: readonly Limit[], id: string): Limit => {
  const found = limits.find((limit) => limit.id === id);
  if (found === undefined) throw new Error(`limit ${id} expected, found ${limits.map((limit) => limit.id)}`);
  return found;
};

describe("[G10] the limits of a placement", () => {
  test("come in a fixed order, each once", () => {
    expect(limitsOf({ ...situation, fixed: [pier] }, tight).map(({ id }) => id)).toEqual([
      "stroke.retracted",
      "stroke.extended",
      "lever",
      "deadCentre",
      "clearance.leaf",
      "clearance.pier",
      "rod.contact",
      "sweep.pier",
      "force",
    ]);
  });

  test("stroke: margins are kept at both ends", () => {
    const ram = { ...situation.ram, retractedMargin: 0.01, extendedMargin: 0.02 };
    const limits = limitsOf({ ...situation, ram }, tight);
    expect(byId(limits, "stroke.retracted")).toMatchObject({
      limit: 0.77,
      state: "fail",
      atAngle: Math.PI / 2,
    });
    expect(byId(limits, "stroke.retracted").slack).toBeCloseTo(-0.01, 4);
    expect(byId(limits, "stroke.extended").limit).toBeCloseTo(1.14, 12);
    // 760 + 400 − 20 − 1059.2 mm.
    expect(byId(limits, "stroke.extended").slack).toBeCloseTo(0.0808, 4);
    expect(byId(limits, "stroke.extended").atAngle).toBe(0);
  });

  test("lever and clearance against what is needed", () => {
    const limits = limitsOf(situation, tight);
    expect(byId(limits, "lever").slack).toBeCloseTo(0.0205, 4);
    expect(byId(limits, "clearance.leaf").value).toBeCloseTo(0.0323, 4);
    expect(byId(limits, "clearance.leaf").slack).toBeCloseTo(-0.0177, 4);
    expect(byId(limits, "clearance.leaf").state).toBe("fail");
    // Where: on the tube's side that faces the open leaf's face at along = −25 mm.
    expect(byId(limits, "clearance.leaf").where?.x).toBeCloseTo(-0.025 - 0.0323, 3);
  });

  test("defaults: 50 mm, 15 mm, 5°, no lever", () => {
    expect(defaultNeed).toMatchObject({ clearance: 0.05, fixedClearance: 0.015, lever: 0, sweep: 0 });
    expect((defaultNeed.deadCentre * 180) / Math.PI).toBeCloseTo(5, 12);
  });

  test("a dead centre asked for as 0° is still not passed", () => {
    const need = { ...defaultNeed, deadCentre: 0 };
    expect(leastDeadCentre(need)).toBeGreaterThan(0);
    const crossing = { postPin: { along: -0.2, out: -0.2 }, leafPin: { along: 1, off: 0 }, rise: 0 };
    const limit = byId(limitsOf({ ...situation, need }, crossing), "deadCentre");
    expect(limit.state).toBe("fail");
    expect(limit.unit).toBe("rad");
  });

  test("force is not checked without loads, and never passes in silence", () => {
    expect(byId(limitsOf(situation, tight), "force")).toEqual({
      id: "force",
      state: "not-checked",
      unit: "ratio",
      value: null,
      limit: null,
      slack: null,
      atAngle: null,
      where: null,
    });
  });

  test("a clearance that has nothing to compare is not applicable", () => {
    // A tube so long that its rod never shows.
    const ram = { ...situation.ram, tube: [{ from: 0, to: 1.3, halfWidth: 0.01 }] };
    expect(byId(limitsOf({ ...situation, ram }, tight), "rod.contact").state).toBe("not-applicable");
  });

  test("the leaf's own sweep is judged against each thing", () => {
    const limit = byId(limitsOf({ ...situation, fixed: [pier] }, tight), "sweep.pier");
    expect(limit.value).toBeCloseTo(0.015, 6);
    expect(limit.state).toBe("pass");
    const strict = { ...situation, fixed: [pier], need: { ...situation.need, sweep: 0.02 } };
    expect(byId(limitsOf(strict, tight), "sweep.pier").state).toBe("fail");
    expect(reserveOf(strict, tight).feasible).toBe(false);
  });

  test("prepared once or not, the limits are the same", () => {
    const full = { ...situation, fixed: [pier] };
    expect(limitsOf(prepare(full), tight)).toEqual(limitsOf(full, tight));
  });
});

describe("[G11] reserve: check values of the placement rules", () => {
  test("the tight placement scores −17.7 mm for its clearance", () => {
    const { reserve, feasible, asShareOfLimit, firstToBreak } = reserveOf(situation, tight);
    expect(reserve).toBeCloseTo(-0.0177, 4);
    expect({ feasible, asShareOfLimit }).toEqual({ feasible: false, asShareOfLimit: false });
    expect(firstToBreak).toEqual({ limit: "clearance.leaf", atAngle: Math.PI / 2, direction: null });
  });

  test("only angles broken: minus the share of the limit, in thousandths", () => {
    // Post pin near the closed leaf pin's line: 2.75° to dead centre where 5° are asked for, all else roomy.
    const flat = { postPin: { along: -0.2, out: 0.06 }, leafPin: { along: 1, off: 0 }, rise: 0 };
    const roomy: Situation = {
      ...situation,
      ram: { ...situation.ram, retracted: 0.3, stroke: 2, tube: [{ from: 0, to: 0.1, halfWidth: 0.001 }] },
      leaf: { ...situation.leaf, face: -0.3 },
      need: { ...defaultNeed, clearance: 0 },
    };
    const angle = byId(limitsOf(roomy, flat), "deadCentre");
    const { reserve, asShareOfLimit, firstToBreak } = reserveOf(roomy, flat);
    expect(asShareOfLimit).toBe(true);
    expect(firstToBreak?.limit).toBe("deadCentre");
    expect(reserve).toBeCloseTo(((angle.slack ?? 0) / defaultNeed.deadCentre) * 1e-3, 12);
    expect(reserve).toBeLessThan(0);
  });

  test("a single limit in play gives what it gives by hand", () => {
    // Level pins on one line at θ = 0: L = d − along; both errors lengthen it, so ε = slack ÷ 2.
    const line = { postPin: { along: -1, out: 0.5 }, leafPin: { along: 1, off: 0.5 }, rise: 0 };
    const still: Situation = {
      ...situation,
      leaf: { ...situation.leaf, face: -2, travel: { swing: "toward", openAngle: 0.2 } },
      ram: {
        ...situation.ram,
        retracted: 0.5,
        stroke: 1.5 + 0.004,
        tube: [{ from: 0, to: 0.1, halfWidth: 0.01 }],
      },
      need: { ...defaultNeed, clearance: 0 },
    };
    const { reserve, firstToBreak } = reserveOf(still, line);
    expect(firstToBreak?.limit).toBe("stroke.extended");
    expect(firstToBreak?.atAngle).toBe(0);
    // Across the line, the errors may differ by 2ε as well: (L + 2ε)² + (2ε)² = 2.004², from L = 2.
    const exact = (-4 * 2 + Math.sqrt((4 * 2) ** 2 + 4 * 8 * (2.004 ** 2 - 4))) / 16;
    expect(reserve).toBeCloseTo(exact, 7);
    expect(firstToBreak?.direction?.postAlong).toBeCloseTo(-1, 6);
    expect(firstToBreak?.direction?.leafAlong).toBeCloseTo(1, 6);
  });
});
