import type { JobLeaf, JobRam } from "@pintle/job";
import { expect, test } from "vitest";
import { plainPage } from "../../testing/plain-page.ts";
import { planText } from "./plan.ts";

const page = plainPage({ columns: 60 });

const leaf: JobLeaf = {
  id: "yard",
  hingeSide: "left",
  swing: "toward",
  openAngleDeg: 90,
  lengthMm: 1500,
  heelMm: 30,
  thicknessMm: 50,
  faceMm: 25,
  fixed: [
    {
      name: "pier",
      outlineMm: [
        [-440, -215],
        [-40, -215],
        [-40, 70],
        [-440, 70],
      ],
    },
  ],
};
const placement = { postPin: { alongMm: -150, outMm: 150 }, leafPin: { alongMm: 907, offMm: 85 } };
const ram: JobRam = {
  id: "ram-a",
  retractedMm: 760,
  strokeMm: 400,
  tube: [{ fromMm: -60, toMm: 560, halfWidthMm: 45 }],
  rodHalfWidthMm: 12,
};

test("[I2] the plan shows leaf and ram closed and open, pins, hinge and fixed things, to a stated scale", () => {
  expect(
    `\n${planText({ leaf, placement, ram, display: "metric" }, page).join("\n")}`,
  ).toMatchInlineSnapshot(`
    "
      ░░░░░░░░░░░░░░░░░
      ░░░░░░░░░░░░░░░░░
      ░░░░░░░░░░░░░░░░░
      ░░░░░░░░░░░░░░░░░
      ░░░░░░░░░░░░░░░░░ H======================================
      ░░░░░░░░░░░░░░░░░::============%%%%======================
               %%%%%%%%%%%%%%%%%%%%%%%%%%-------------------G
               %%%P%%%%%%%%%%%%%%%%%%%%%%
               %%%%%%%%%%%%%%%%%
                ooooo  :::
                ooooo  :::
                ooooo  :::
                ooooo  :::
                 oooo  :::
                 ooooo :::
                 ooooo :::
                 ooooo :::
                 ooooo :::
                  oooo :::
                    ·  :::
                    ·  :::
                    ·  :::
                    g  :::
                       :::

    H hinge axis, = leaf closed, : leaf open, P post pin,
    G leaf pin closed, g open, %- ram closed, o· ram open,
    ░ fixed
    |------| 200 mm; one column is 25 mm, one row 50 mm; seen
    from above, the ram's side toward you"
  `);
});

test("[G1] a hinge on the right is the mirror image", () => {
  const drawing = (hingeSide: "left" | "right") =>
    planText({ leaf: { ...leaf, hingeSide }, placement, ram, display: "metric" }, page);
  const [left, right] = [drawing("left"), drawing("right")];
  const place = (rows: readonly string[], mark: string) =>
    rows.find((row) => row.includes(mark))?.indexOf(mark) ?? NaN;
  // The hinge post is on the page where the person looking at the gate from the ram's side sees it.
  expect(place(left, "P")).toBeLessThan(place(left, "G"));
  expect(place(right, "G")).toBeLessThan(place(right, "P"));
  const rowOf = (rows: readonly string[], mark: string) => rows.findIndex((row) => row.includes(mark));
  expect(rowOf(left, "P")).toBe(rowOf(right, "P"));
});

test("[G2] a leaf that swings away opens to the other side of the page", () => {
  const rowOf = (swing: "toward" | "away", mark: string) =>
    planText({ leaf: { ...leaf, swing }, placement, ram, display: "metric" }, page).findIndex((row) =>
      row.includes(mark),
    );
  expect(rowOf("toward", "g")).toBeGreaterThan(rowOf("toward", "H"));
  expect(rowOf("away", "g")).toBeLessThan(rowOf("away", "H"));
});

test("[I2] without pins the leaf alone is drawn", () => {
  const rows = planText({ leaf, placement: null, ram: null, display: "metric" }, page).join("\n");
  expect(rows).toContain("=");
  expect(rows).not.toContain("%");
  expect(rows).not.toContain("post pin");
});
