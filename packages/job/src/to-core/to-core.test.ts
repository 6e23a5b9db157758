import { limitsOf } from "@pintle/core";
import { describe, expect, test } from "vitest";
import type { Job } from "../schema/job.ts";
import { quarryLane } from "../testing/quarry-lane.ts";
import { toFixedThings, toLeaf, toPostFaces, toRam } from "./leaf-to-core.ts";
import { fromPlacement, plainReachName, toPlacement, toReach } from "./pins-to-core.ts";
import { toReadings } from "./readings-to-core.ts";
import { ramFor, toNeed, toSituation } from "./situation-to-core.ts";

const job = quarryLane() as Job;
const leaf = job.leaves[0] as Job["leaves"][0];
const ram = (job.rams ?? [])[0] as NonNullable<Job["rams"]>[0];

describe("[G1][G3] a job's leaf, ram and surroundings in SI", () => {
  test("leaf and ram", () => {
    expect(toLeaf(leaf)).toEqual({
      heel: 0.03,
      length: 3.6,
      thickness: 0.05,
      face: 0.025,
      boxes: [],
      travel: { swing: "toward", openAngle: (92 * Math.PI) / 180 },
    });
    expect(toRam(ram)).toEqual({
      id: "demo-ram-400",
      retracted: 0.76,
      stroke: 0.4,
      retractedMargin: 0.01,
      extendedMargin: 0.01,
      tube: [{ from: -0.06, to: 0.56, halfWidth: 0.045 }],
      rodHalfWidth: 0.012,
      speed: 0.018,
      thrust: 1500,
      longestLeaf: null,
      heaviestLeaf: null,
    });
  });

  test("what a ram's sheet leaves out is null, margins left out are 0", () => {
    const { retractedMarginMm: _r, extendedMarginMm: _e, thrustN: _t, speedMmS: _s, ...bare } = ram;
    expect(toRam(bare)).toMatchObject({ retractedMargin: 0, extendedMargin: 0, thrust: null, speed: null });
  });

  test("an outline that repeats its first corner is not given twice", () => {
    const closed = quarryLane() as Job;
    const pier = closed.leaves[0]?.fixed?.[0];
    pier?.outlineMm.push([-440, -215]);
    expect(toFixedThings(closed.leaves[0] as typeof leaf)).toEqual(toFixedThings(leaf));
    expect(toFixedThings(leaf)[0]?.outline).toHaveLength(4);
  });

  test("boxes and post faces keep their axes apart", () => {
    const boxed = {
      ...leaf,
      boxes: [{ alongMm: [30, 90] as [number, number], offMm: [25, 65] as [number, number] }],
    };
    expect(toLeaf(boxed).boxes).toEqual([{ alongFrom: 0.03, alongTo: 0.09, offFrom: 0.025, offTo: 0.065 }]);
    expect(toPostFaces(leaf)).toBe(null);
    expect(toPostFaces({ ...leaf, post: { gatewayFaceAlongMm: -40, ramFaceOutMm: 70 } })).toEqual({
      ramSideOut: 0.07,
      gatewayAlong: -0.04,
    });
  });
});

describe("[G10] needs", () => {
  test("what the job asks for, and the core's defaults for the rest", () => {
    const deadCentre = (5 * Math.PI) / 180;
    expect(toNeed(leaf.need)).toEqual({
      clearance: 0.05,
      fixedClearance: 0.015,
      lever: 0.12,
      deadCentre,
      sweep: 0,
    });
    expect(toNeed(undefined)).toEqual({
      clearance: 0.05,
      fixedClearance: 0.015,
      lever: 0,
      deadCentre,
      sweep: 0,
    });
    expect(toNeed({ clearanceMm: 0, deadCentreDeg: 8, sweepMm: 20 })).toMatchObject({
      clearance: 0,
      deadCentre: (8 * Math.PI) / 180,
      sweep: 0.02,
    });
  });

  test("the check values of the placement rules come out through the mapping", () => {
    const checked = {
      ...leaf,
      openAngleDeg: 90,
      placement: { postPin: { alongMm: -150, outMm: 150 }, leafPin: { alongMm: 907.2, offMm: 85 } },
    };
    const placement = toPlacement(checked.placement);
    if (!placement) throw new Error("no placement");
    const limits = limitsOf(toSituation(checked, ram), placement);
    const mm = (id: string) =>
      Math.round((limits.find((limit) => limit.id === id)?.value ?? Number.NaN) * 1e4) / 10;
    // Rules G1 to G19, "Check values": 1059.2 closed, 760.0 open, lever 140.5, clearance 32.3.
    expect(mm("stroke.extended")).toBe(1059.2);
    expect(mm("stroke.retracted")).toBe(760);
    expect(mm("lever")).toBe(140.5);
    expect(mm("clearance.leaf")).toBe(32.3);
  });
});

describe("[G12][G13] where the pins may go", () => {
  test("a plain reach is one site for each pin", () => {
    expect(toReach(leaf)).toEqual({
      ok: true,
      reach: {
        postPin: [
          {
            bracket: plainReachName,
            along: { from: -0.26, to: -0.06, step: null },
            out: { from: 0.08, to: 0.32, step: null },
          },
        ],
        leafPin: [
          {
            bracket: plainReachName,
            along: { from: 0.6, to: 1.4, step: null },
            off: { from: 0.085, to: 0.145, step: null },
          },
        ],
        rise: 0,
      },
    });
  });

  test("brackets of one pin replace the reach of that pin only", () => {
    const bracketed: typeof leaf = {
      ...leaf,
      post: { gatewayFaceAlongMm: -40, ramFaceOutMm: 70 },
      brackets: {
        post: [
          {
            kind: "plate",
            id: "P",
            face: "ramSide",
            positionMm: [-300, -100],
            stepMm: 10,
            standOffMm: [60, 90],
          },
          { kind: "slotted", id: "S", face: "gateway", positionMm: [-200, 0], slotMm: [40, 80] },
          {
            kind: "indexing",
            id: "I",
            face: "ramSide",
            positionMm: [-200, -100],
            boltStandOffMm: 30,
            radiusMm: 100,
            anglesDeg: [90, 180],
          },
          { kind: "welded", id: "W", alongMm: [-150, -100], outMm: [100, 150] },
        ],
      },
    };
    const reach = toReach(bracketed);
    if (!reach.ok) throw new Error("no reach");
    expect(reach.reach.leafPin[0]?.bracket).toBe(plainReachName);
    const sites = reach.reach.postPin.map((site) => ({
      bracket: site.bracket,
      along: [site.along.from, site.along.to, site.along.step].map(toMm),
      out: [site.out.from, site.out.to, site.out.step].map(toMm),
    }));
    // By hand from rule G13: stand-offs are measured from the face at out 70 or along −40, the arm is 100 long.
    expect(sites).toEqual([
      { bracket: "P, stand-off 60 mm", along: [-300, -100, 10], out: [130, 130, null] },
      { bracket: "P, stand-off 90 mm", along: [-300, -100, 10], out: [160, 160, null] },
      { bracket: "S", along: [0, 40, null], out: [-200, 0, null] },
      { bracket: "I, locked at 90°", along: [-200, -100, null], out: [200, 200, null] },
      { bracket: "I, locked at 180°", along: [-300, -200, null], out: [100, 100, null] },
      { bracket: "W", along: [-150, -100, null], out: [100, 150, null] },
    ]);
  });

  test("a leaf bracket lands on members only, off the ram-side face", () => {
    const bracketed: typeof leaf = {
      ...leaf,
      brackets: {
        leaf: [
          {
            id: "L",
            standOffMm: [60],
            membersMm: [
              [700, 760],
              [1100, 1160],
            ],
          },
        ],
      },
    };
    const reach = toReach(bracketed);
    expect(
      reach.ok &&
        reach.reach.leafPin.map((site) => [toMm(site.along.from), toMm(site.along.to), toMm(site.off.from)]),
    ).toEqual([
      [700, 760, 85],
      [1100, 1160, 85],
    ]);
  });

  test("missing keys are named", () => {
    const { reach: _reach, ...bare } = leaf;
    expect(toReach(bare)).toEqual({ ok: false, missing: ["reach.postPin", "reach.leafPin"] });
  });

  test("the rise is that of the reach, else of the placement", () => {
    const rise = (one: typeof leaf) => {
      const reach = toReach(one);
      return reach.ok ? reach.reach.rise : null;
    };
    const placement = { ...(leaf.placement as NonNullable<typeof leaf.placement>), riseMm: 40 };
    expect(rise({ ...leaf, placement })).toBe(0.04);
    expect(rise({ ...leaf, placement, reach: { ...leaf.reach, riseMm: 20 } })).toBe(0.02);
  });
});

test("[G18] readings in SI, named by their place in the job", () => {
  const asBuilt = {
    readings: [
      { kind: "hingeToPostPin" as const, valueMm: 212.1, standardErrorMm: 3 },
      { kind: "pinToPin" as const, valueMm: 900, leafAt: 45 },
      { kind: "postPinFromGatewayFace" as const, valueMm: -20, leafAt: "closed" as const },
    ],
  };
  expect(toReadings({ ...leaf, asBuilt })).toEqual([
    { id: "asBuilt.readings[0]", kind: "hingeToPostPin", value: 0.2121, standardError: 0.003 },
    { id: "asBuilt.readings[1]", kind: "pinToPin", value: 0.9, leafAt: { angle: Math.PI / 4 } },
    { id: "asBuilt.readings[2]", kind: "postPinFromGatewayFace", value: -0.02 },
  ]);
  expect(toReadings(leaf)).toEqual([]);
});

describe("placements there and back, and rams by id", () => {
  test("fromPlacement undoes toPlacement", () => {
    const placement = toPlacement(leaf.placement);
    expect(placement && fromPlacement(placement)).toEqual(leaf.placement);
    expect(toPlacement(undefined)).toBe(null);
  });

  test("ramFor takes the leaf's own ram, or the one asked for", () => {
    expect(ramFor(job, leaf)).toBe(ram);
    expect(ramFor(job, { ...leaf, ram: "other" }, "demo-ram-400")).toBe(ram);
    const { ram: _ram, ...without } = leaf;
    expect(ramFor(job, without)).toBe(null);
    expect(() => ramFor(job, leaf, "x")).toThrow('found no ram "x"; it expects one of: demo-ram-400');
  });
});

function toMm(metres: number | null): number | null {
  return metres === null ? null : Math.round(metres * 1e7) / 1e4 + 0;
}
