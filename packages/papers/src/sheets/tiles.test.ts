import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Drawn, DrawnClip } from "../scene/drawn.ts";
import { overlap, tiles } from "./tiles.ts";

const box = { left: 8, top: 20, right: 200, bottom: 230 };
const dot: Drawn = { kind: "circle", role: "ram", centre: { x: 0, y: 0 }, radius: 1, fill: "none" };

const clipOf = (items: readonly Drawn[]): DrawnClip => {
  const [clip] = items;
  if (clip?.kind !== "clip") throw new Error("a tile is one clip");
  return clip;
};
const namesOf = (clip: DrawnClip) =>
  clip.items.flatMap((item) => {
    if (item.kind !== "text") return [];
    const seen =
      item.at.x > clip.left && item.at.x < clip.right && item.at.y > clip.top && item.at.y < clip.bottom;
    return seen ? [item.text] : [];
  });

describe("[F10] a full-size drawing on several sheets", () => {
  test("what fits is one sheet without marks, in the middle", () => {
    const [only, ...more] = tiles([dot], { left: -50, top: -50, right: 50, bottom: 50 }, box);
    expect(more).toEqual([]);
    expect(only?.name).toBe("");
    const [item] = clipOf(only?.items ?? []).items;
    expect(item).toMatchObject({ centre: { x: 104, y: 125 } });
  });

  test("every point of the drawing is on a sheet, and neighbours share their joints", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 900, noNaN: true }),
        fc.double({ min: 1, max: 900, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (width, height, u, v) => {
          const at = { x: u * width, y: v * height };
          const cut = tiles([{ ...dot, centre: at }], { left: 0, top: 0, right: width, bottom: height }, box);
          const clips = cut.map((tile) => clipOf(tile.items));
          const shows = clips.some((clip) => {
            const [item] = clip.items;
            if (item?.kind !== "circle") return false;
            const { x, y } = item.centre;
            return x >= clip.left && x <= clip.right && y >= clip.top && y <= clip.bottom;
          });
          expect(shows).toBe(true);
          const joints = clips.flatMap(namesOf);
          for (const name of joints) expect(joints.filter((one) => one === name).length).toBeGreaterThan(1);
        },
      ),
      { seed: 21, numRuns: 200 },
    );
  });

  test("two sheets: a drawing just too wide laps over by the same width on both", () => {
    const cut = tiles([dot], { left: 0, top: 0, right: 300, bottom: 100 }, box);
    expect(cut.map((tile) => tile.name)).toEqual(["A1", "B1"]);
    const places = cut.map((tile) => {
      const [item] = clipOf(tile.items).items;
      return item?.kind === "circle" ? item.centre.x : Number.NaN;
    });
    expect((places[0] ?? 0) - (places[1] ?? 0)).toBeCloseTo(box.right - box.left - overlap, 9);
  });
});
