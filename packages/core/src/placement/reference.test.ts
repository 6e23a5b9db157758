import { describe, expect, test } from "vitest";
import best from "../../../../reference/placement/best-in-reach.json" with { type: "json" };
import deadCentre from "../../../../reference/placement/dead-centre-at-a-corner.json" with { type: "json" };
import narrow from "../../../../reference/placement/gate-150-150.json" with { type: "json" };
import wide from "../../../../reference/placement/gate-200-160.json" with { type: "json" };
import rail from "../../../../reference/placement/rail-beside-panel.json" with { type: "json" };
import { greatestLever, leastLever } from "../linkage/lever-arm.ts";
import { lengthRange } from "../linkage/pin-to-pin.ts";
import { bestPlacement } from "../search/best-placement.ts";
import type { Limit } from "./limit.ts";
import { limitsOf } from "./limits.ts";
import { pinsOf, placementOf, reserveOf } from "./reserve.ts";
import type { Situation } from "./situation.ts";
import { defaultNeed } from "./situation.ts";

const degrees = (angle: number | null) => ((angle ?? Number.NaN) * 180) / Math.PI;
const mm = (metres: number | null) => (metres ?? Number.NaN) * 1000;

type GateInput = Pick<typeof narrow.input, "ram" | "leaf" | "need">;

function situationOf({ ram, leaf, need }: GateInput): Situation {
  return {
    leaf: {
      heel: leaf.heelMm / 1000,
      length: leaf.lengthMm / 1000,
      thickness: leaf.thicknessMm / 1000,
      face: leaf.faceMm / 1000,
      boxes: [],
      travel: { swing: leaf.swing as "toward" | "away", openAngle: (leaf.openAngleDeg * Math.PI) / 180 },
    },
    ram: {
      id: "reference ram",
      retracted: ram.retractedMm / 1000,
      stroke: ram.strokeMm / 1000,
      retractedMargin: 0,
      extendedMargin: 0,
      tube: [
        { from: ram.tubeMm.from / 1000, to: ram.tubeMm.to / 1000, halfWidth: ram.tubeMm.halfWidth / 1000 },
      ],
      rodHalfWidth: ram.rodHalfWidthMm / 1000,
      speed: null,
      thrust: null,
      longestLeaf: null,
      heaviestLeaf: null,
    },
    fixed: [],
    need: { ...defaultNeed, clearance: need.clearanceMm / 1000, lever: need.leverMm / 1000 },
  };
}

const placementOfMm = ({ along, out, d, e }: typeof narrow.input.pinsMm) => ({
  postPin: { along: along / 1000, out: out / 1000 },
  leafPin: { along: d / 1000, off: e / 1000 },
  rise: 0,
});

function checkGate({ input, expected, tolerance }: typeof wide) {
  const situation = situationOf(input);
  const { travel } = situation.leaf;
  const placement = placementOfMm(input.pinsMm);
  const near = (found: number, wanted: number) => expect(Math.abs(found - wanted)).toBeLessThan(tolerance.mm);
  const range = lengthRange(placement, travel);
  near(mm(range.closed), expected.lengthClosedMm);
  near(mm(range.open), expected.lengthOpenMm);
  const least = leastLever(placement, travel);
  near(mm(least.value), expected.leastLeverMm);
  expect(Math.abs(degrees(least.atAngle) - expected.leastLeverAtDeg)).toBeLessThan(tolerance.deg);
  const limits = limitsOf(situation, placement);
  const clearance = limits.find(({ id }) => id === "clearance.leaf") as Limit;
  near(mm(clearance.value), expected.clearanceMm);
  expect(Math.abs(degrees(clearance.atAngle) - expected.clearanceAtDeg)).toBeLessThan(tolerance.deg);
  return { situation, placement, near };
}

describe("[G5] [G6] [G7] [G11] [G12] reference cases", () => {
  test(narrow.id, () => {
    const { situation, placement, near } = checkGate(narrow);
    near(mm(greatestLever(placement, situation.leaf.travel).value), narrow.expected.greatestLeverMm);
    const { reserve, firstToBreak } = reserveOf(situation, placement);
    near(mm(reserve), narrow.expected.reserveMm);
    expect(firstToBreak?.limit).toBe(narrow.expected.firstToBreak);
  });

  test(wide.id, () => {
    checkGate(wide);
  });

  test(best.id, () => {
    const { input, expected, tolerance } = best;
    const situation = situationOf(input);
    const span = ([from, to]: readonly number[]) => ({ from: from! / 1000, to: to! / 1000, step: null });
    const { along, out, d, e } = input.reachMm;
    const found = bestPlacement(situation, {
      postPin: [{ bracket: "welded", along: span(along), out: span(out) }],
      leafPin: [{ bracket: "welded", along: span(d), off: span(e) }],
      rise: 0,
    });
    if (found.status !== "found") throw new Error(`a placement expected, ${found.status} found`);
    expect(Math.abs(mm(found.reserve) - expected.reserveMm)).toBeLessThan(tolerance.mm);
    const pins = pinsOf(found.placement);
    const wanted = pinsOf(placementOfMm(expected.pinsMm));
    pins.forEach((pin, j) => {
      expect(Math.abs(mm(pin) - mm(wanted[j]!))).toBeLessThan(tolerance.pinsMm);
    });
    const stated = reserveOf(situation, placementOfMm(expected.pinsMm));
    expect(Math.abs(mm(stated.reserve) - expected.reserveMm)).toBeLessThan(tolerance.mm);
    const brokenWithin = (size: number) =>
      Array.from({ length: 16 }, (_, corner) =>
        pins.map((pin, j) => pin + ((corner >> j) & 1 ? size : -size)),
      )
        .flatMap((moved) => limitsOf(situation, placementOf(moved, 0)))
        .filter(({ state }) => state === "fail")
        .map(({ id }) => id);
    expect(brokenWithin(found.reserve - 2e-5)).toEqual([]);
    expect(brokenWithin(found.reserve + tolerance.mm / 1000)).toContain(expected.firstToBreak);
  });

  test.each([rail, deadCentre])("$id", ({ input, expected, tolerance }) => {
    const { reserve, firstToBreak } = reserveOf(input.situation as Situation, input.placement);
    expect(Math.abs(mm(reserve) - expected.reserveMm)).toBeLessThan(tolerance.mm);
    expect(firstToBreak?.limit).toBe(expected.firstToBreak);
  });
});
