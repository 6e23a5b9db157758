import { describe, expect, test } from "vitest";
import { sampleJob } from "../testing/sample-jobs.ts";
import { type PlanOptions, planScene } from "./plan-scene.ts";
import type { Scene, Shape } from "./scene.ts";

const options: PlanOptions = {
  standsOn: "ramSide",
  leafAngleDeg: 0,
  ghostAnglesDeg: [90],
  sweep: true,
  labels: true,
  dimensions: {
    ids: ["postPinBehindHinge", "postPinOut", "leafPinFromHinge", "leafPinFromLeafFace", "pinToPinAtSetUp"],
  },
};
const job = sampleJob();
const placement = job.leaves[0]?.placement ?? null;
const plan = (change: Partial<PlanOptions> = {}, of = job): Scene =>
  planScene(of, 0, of.leaves[0]?.placement ?? null, { ...options, ...change });

const mark = (scene: Scene, part: string) => {
  const found = scene.shapes.find((shape) => shape.kind === "mark" && shape.part === part);
  return found?.kind === "mark" ? found.at : null;
};
const figures = (scene: Scene) =>
  scene.shapes.flatMap((shape) => (shape.kind === "dimension" ? [shape.text] : []));
const ofKind = <K extends Shape["kind"]>(scene: Scene, kind: K) =>
  scene.shapes.filter((shape): shape is Extract<Shape, { kind: K }> => shape.kind === kind);

describe("[I1] the plan of one leaf", () => {
  test("pins where the job has them, the hinge at the origin", () => {
    expect(mark(plan(), "postPin")).toEqual({ x: -150, y: 160 });
    expect(mark(plan(), "leafPin")).toEqual({ x: 907, y: 85 });
    expect(mark(plan(), "hinge")).toEqual({ x: 0, y: 0 });
  });

  test("the leaf pin goes with the leaf: a quarter turn toward takes (907, 85) to (−85, 907)", () => {
    const at = mark(plan({ leafAngleDeg: 90 }), "leafPin");
    expect(at?.x).toBeCloseTo(-85, 9);
    expect(at?.y).toBeCloseTo(907, 9);
  });

  test("a leaf that swings away turns the other way", () => {
    const away = sampleJob((draft) => (draft.leaves[0].swing = "away"));
    const at = mark(plan({ leafAngleDeg: 90 }, away), "leafPin");
    expect(at?.x).toBeCloseTo(85, 9);
    expect(at?.y).toBeCloseTo(-907, 9);
  });

  test("mirrored for a right-hand leaf, with the same figures", () => {
    const right = plan(
      {},
      sampleJob((draft) => (draft.leaves[0].hingeSide = "right")),
    );
    expect(mark(right, "postPin")).toEqual({ x: 150, y: 160 });
    expect(figures(right)).toEqual(figures(plan()));
    expect(right.extent.left).toBeCloseTo(-plan().extent.right, 9);
  });

  test("figures are those of the setting out; hypot(1057, 75) = 1059.7 from pin to pin closed", () => {
    const away = sampleJob((draft) => {
      draft.leaves[0].swing = "away";
    });
    expect(figures(plan({}, away))).toEqual(["150", "160", "907", "60", "1059.7"]);
  });

  test("letters stand before their figures", () => {
    const lettered = plan({ dimensions: { ids: ["postPinOut"], letters: { postPinOut: "B" } } });
    expect(figures(lettered)).toEqual(["B  160"]);
  });

  test("the toe's way ends where the open leaf is", () => {
    for (const [change, to] of [
      [{}, Math.PI / 2],
      [{ swing: "away" }, -Math.PI / 2],
    ] as const) {
      const scene = plan(
        {},
        sampleJob((draft) => Object.assign(draft.leaves[0], change)),
      );
      const [arc] = ofKind(scene, "arc");
      expect(arc?.fromAngle).toBeCloseTo(0, 12);
      expect(arc?.toAngle).toBeCloseTo(to, 12);
    }
  });

  test("the tube is as long as the ram's sheet says, and shortened where the ram climbs", () => {
    const tubeLength = (scene: Scene) => {
      const tube = ofKind(scene, "outline").find((shape) => shape.part === "ram" && shape.spots.length === 4);
      const long = ofKind(scene, "outline")
        .filter((shape) => shape.part === "ram")
        .map(({ spots }) =>
          Math.hypot((spots[1]?.x ?? 0) - (spots[0]?.x ?? 0), (spots[1]?.y ?? 0) - (spots[0]?.y ?? 0)),
        );
      expect(tube).toBeDefined();
      return Math.max(...long);
    };
    expect(tubeLength(plan())).toBeCloseTo(620, 6);
    const climbing = sampleJob((draft) => (draft.leaves[0].placement.riseMm = 300));
    const flat = Math.hypot(1057, 75);
    expect(tubeLength(plan({}, climbing))).toBeCloseTo((620 * flat) / Math.hypot(flat, 300), 5);
  });

  test("a cut leaf ends at the cut, with a break line", () => {
    const cut = plan({ cutAtMm: 1200, ghostAnglesDeg: [], sweep: false });
    expect(cut.extent.right).toBe(1200);
    expect(plan().extent.right).toBe(3600);
  });

  test("no ram and no pins: the leaf alone; no such leaf: told", () => {
    expect(mark(planScene(job, 0, null, options), "postPin")).toBe(null);
    expect(() => planScene(job, 3, placement, options)).toThrow(
      "planScene found leaf 3; it expects one of 1",
    );
  });

  test("a post of which only faces are known is drawn as a corner, one that is drawn already is not drawn twice", () => {
    const parts = (scene: Scene) => ofKind(scene, "outline").map((shape) => shape.part);
    expect(parts(plan())).not.toContain("post");
    expect(
      parts(
        plan(
          {},
          sampleJob((draft) => delete draft.leaves[0].fixed),
        ),
      ),
    ).toContain("post");
  });
});
