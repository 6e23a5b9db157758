import { describe, expect, test } from "vitest";
import { sampleJob } from "../testing/sample-jobs.ts";
import type { Scene, Shape } from "./scene.ts";
import { leafTemplate, postTemplate } from "./template-scenes.ts";

const job = sampleJob();
const leaf = job.leaves[0] as (typeof job.leaves)[0];
const placement = leaf.placement as NonNullable<typeof leaf.placement>;

/** The smallest ring of each role stands on a centre. */
const centre = (shapes: Scene["shapes"], role: Shape["role"]) =>
  shapes.find((shape) => shape.kind === "circle" && shape.role === role && shape.radius === 1);

describe("[F10] full-size templates", () => {
  test("post pin and hinge axis as far apart as the placement says", () => {
    const { shapes, window } = postTemplate(job, leaf, placement);
    expect(centre(shapes, "ram")).toMatchObject({ centre: { x: -150, y: 160 } });
    expect(centre(shapes, "hinge")).toMatchObject({ centre: { x: 0, y: 0 } });
    expect(window).toEqual({ left: -161, top: -11, right: 11, bottom: 171 });
  });

  test("mirrored for a right-hand leaf", () => {
    const right = { ...leaf, hingeSide: "right" as const };
    expect(centre(postTemplate(job, right, placement).shapes, "ram")).toMatchObject({
      centre: { x: 150, y: 160 },
    });
  });

  test("the leaf's template hangs on a round distance: 850 is the last whole 50 at least 25 short of 907", () => {
    const { shapes } = leafTemplate(job, leaf, placement);
    const texts = shapes.flatMap((shape) =>
      shape.kind === "text" || shape.kind === "dimension" ? [shape.text] : [],
    );
    expect(texts).toEqual(expect.arrayContaining(["850 mm from the hinge axis", "57", "60"]));
    expect(centre(shapes, "ram")).toMatchObject({ centre: { x: 907, y: 85 } });
  });

  test("in feet and inches on whole inches: 34 in is 863.6 mm", () => {
    const { shapes } = leafTemplate({ ...job, display: "us" }, leaf, placement);
    const texts = shapes.flatMap((shape) => (shape.kind === "text" ? [shape.text] : []));
    expect(texts).toContain(`2' 10" from the hinge axis`);
  });
});
