import { describe, expect, test } from "vitest";
import { defaultNeed } from "../placement/situation.ts";
import { clearanceChecks } from "./clearance-check.ts";
import { sweepGaps } from "./leaf-sweep.ts";
import { gapAt, leastGap } from "./least-gap.ts";
import { boxOutline, convexPieces } from "./outline.ts";

const at = (x: number, y: number) => ({ x, y });
const toward = { swing: "toward" as const, openAngle: Math.PI / 2 };
const leaf = { heel: 0.03, length: 3.6, thickness: 0.05, face: 0.025, boxes: [], travel: toward };
const ram = {
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
};
const pier = {
  name: "pier",
  outline: [at(-0.44, -0.215), at(-0.04, -0.215), at(-0.04, 0.07), at(-0.44, 0.07)],
};
const pins = (along: number, out: number, d: number, e: number) => ({
  postPin: { along, out },
  leafPin: { along: d, off: e },
  rise: 0,
});

describe("[G7] clearance over the travel: check values of the placement rules", () => {
  const toLeaf = (along: number, out: number, d: number) => {
    const [check] = clearanceChecks({ leaf, ram, fixed: [], need: defaultNeed });
    if (check === undefined) throw new Error("a check of tube against leaf expected, none found");
    return leastGap(check, pins(along, out, d, 0.085), toward);
  };

  test("32.3 mm at 90°", () => {
    const least = toLeaf(-0.15, 0.15, 0.9072);
    expect(least?.gap).toBeCloseTo(0.0323, 4);
    expect(least?.atAngle).toBe(Math.PI / 2);
  });

  test("45.8 mm at 90°", () => {
    const least = toLeaf(-0.2, 0.16, 0.9112);
    expect(least?.gap).toBeCloseTo(0.0458, 4);
    expect(least?.atAngle).toBe(Math.PI / 2);
  });
});

describe("[G7] what is checked against what", () => {
  const rail = { alongFrom: 0.5, alongTo: 2, offFrom: 0.025, offTo: 0.05 };

  test("tube to leaf and boxes, tube to each thing, rod to both", () => {
    const checks = clearanceChecks({
      leaf: { ...leaf, boxes: [rail] },
      ram,
      fixed: [pier],
      need: defaultNeed,
    });
    expect(
      checks.map(({ id, need, inLeafFrame, outlines }) => [id, need, inLeafFrame, outlines.length]),
    ).toEqual([
      ["clearance.leaf", 0.05, true, 2],
      ["clearance.pier", 0.015, false, 1],
      ["rod.contact", 0, true, 2],
      ["rod.contact", 0, false, 1],
    ]);
  });

  test("the rod starts at the tube's far end and spares its last 80 mm", () => {
    const rod = clearanceChecks({ leaf, ram, fixed: [], need: defaultNeed }).find(
      ({ id }) => id === "rod.contact",
    );
    expect(rod?.sections).toEqual([{ from: 0.56, to: 0.08, toCountsFromLeafPin: true, halfWidth: 0.012 }]);
  });

  test("a rod that never leaves its tube has nothing to touch", () => {
    const long = { ...ram, tube: [{ from: 0, to: 0.9, halfWidth: 0.045 }] };
    const rod = clearanceChecks({ leaf, ram: long, fixed: [], need: defaultNeed }).find(
      ({ id }) => id === "rod.contact",
    );
    // Closed, 1059 − 80 mm shows 79 mm of rod; open, 760 mm shows none.
    const placement = pins(-0.15, 0.15, 0.9072, 0.085);
    expect(rod === undefined ? null : gapAt(rod, placement, toward, Math.PI / 2)).toBe(
      Number.POSITIVE_INFINITY,
    );
    expect(rod === undefined ? null : leastGap(rod, placement, toward)?.gap).toBeGreaterThan(0.04);
    const never = { ...ram, tube: [{ from: 0, to: 1.2, halfWidth: 0.045 }] };
    const inside = clearanceChecks({ leaf, ram: never, fixed: [], need: defaultNeed }).find(
      ({ id }) => id === "rod.contact",
    );
    expect(inside === undefined ? "no check" : leastGap(inside, placement, toward)).toBeNull();
  });

  test("gaps by hand: beside, before and inside a square", () => {
    const still = { swing: "toward" as const, openAngle: 1 };
    // Ram along x from (0, 0) to (1, 0), tube 0 … 0.5 wide 0.1, at leaf angle 0.
    const level = { postPin: { along: 0, out: 0 }, leafPin: { along: 1, off: 0 }, rise: 0 };
    const tube = { ...ram, tube: [{ from: 0, to: 0.5, halfWidth: 0.05 }] };
    const gapTo = (x: number, y: number) => {
      const square = {
        name: "square",
        outline: [at(x, y), at(x + 0.1, y), at(x + 0.1, y + 0.1), at(x, y + 0.1)],
      };
      const check = clearanceChecks({ leaf, ram: tube, fixed: [square], need: defaultNeed })[1];
      return check === undefined ? Number.NaN : gapAt(check, level, still, 0);
    };
    expect(gapTo(0.2, 0.25)).toBeCloseTo(0.2, 12);
    expect(gapTo(0.7, -0.05)).toBeCloseTo(0.2, 12);
    expect(gapTo(0.53, 0.09)).toBeCloseTo(0.05, 12);
    expect(gapTo(-0.14, -0.13)).toBeCloseTo(0.04, 12);
    // Sunk 20 mm through the side; and 10 mm through the end.
    expect(gapTo(0.2, 0.03)).toBeCloseTo(-0.02, 12);
    expect(gapTo(0.49, -0.05)).toBeCloseTo(-0.01, 12);
  });
});

describe("[G7] outlines as convex pieces", () => {
  const area = (polygon: readonly { x: number; y: number }[]) =>
    Math.abs(
      polygon.reduce((sum, a, i) => {
        const b = polygon[(i + 1) % polygon.length] ?? a;
        return sum + (a.x * b.y - a.y * b.x) / 2;
      }, 0),
    );
  const corners = (piece: ReturnType<typeof convexPieces>[number]) =>
    Array.from(piece.x, (x, i) => at(x, piece.y[i] ?? Number.NaN));
  const angle = [at(0, 0), at(1, 0), at(1, 0.2), at(0.2, 0.2), at(0.2, 1), at(0, 1)];

  test("a convex outline stays whole, whichever way round it is given", () => {
    for (const outline of [pier.outline, [...pier.outline].reverse()]) {
      const pieces = convexPieces(outline);
      expect(pieces).toHaveLength(1);
      expect(pieces[0]?.count).toBe(4);
    }
  });

  test("an angle is covered exactly by convex pieces with outward normals", () => {
    for (const outline of [angle, [...angle].reverse()]) {
      const pieces = convexPieces(outline);
      expect(pieces.reduce((sum, piece) => sum + area(corners(piece)), 0)).toBeCloseTo(area(angle), 12);
      for (const piece of pieces) {
        for (let i = 0; i < piece.count; i++) {
          const [nx, ny, offset] = [piece.nx[i] ?? 0, piece.ny[i] ?? 0, piece.offset[i] ?? 0];
          expect(Math.hypot(nx, ny)).toBeCloseTo(1, 12);
          for (const { x, y } of corners(piece)) expect(nx * x + ny * y).toBeLessThanOrEqual(offset + 1e-12);
        }
      }
    }
  });

  test("repeated corners and corners on a straight edge are dropped", () => {
    const square = [at(0, 0), at(0.5, 0), at(1, 0), at(1, 0), at(1, 1), at(0, 1), at(0, 1)];
    expect(convexPieces(square).map(corners)).toEqual([[at(0, 0), at(1, 0), at(1, 1), at(0, 1)]]);
    // An outline that ends where it began, as many drawings do.
    expect(convexPieces([...pier.outline, ...pier.outline.slice(0, 1)]).map(({ count }) => count)).toEqual([
      4,
    ]);
    expect(
      convexPieces([...angle, at(0, 0)]).reduce((sum, piece) => sum + area(corners(piece)), 0),
    ).toBeCloseTo(area(angle), 12);
  });

  test("what has no area gives no piece", () => {
    expect(convexPieces([at(0, 0), at(1, 1), at(2, 2)])).toEqual([]);
    expect(convexPieces([at(0, 0), at(1, 1)])).toEqual([]);
    expect(boxOutline({ alongFrom: 0, alongTo: 1, offFrom: 0.2, offTo: 0.2 })).toEqual([]);
  });
});

describe("[G9] sweep of the leaf", () => {
  const sweep = (outline: readonly { x: number; y: number }[], openAngle = Math.PI / 2) =>
    sweepGaps({ ...leaf, travel: { swing: "toward", openAngle } }, [{ name: "thing", outline }])[0];
  const square = (x: number, y: number, side: number) => [
    at(x, y),
    at(x + side, y),
    at(x + side, y + side),
    at(x, y + side),
  ];

  test("the toe's corner passes a thing on the circle that it draws", () => {
    // The toe's far corner (3.6, −0.025) draws a circle; a square corner 4 m out at 30° faces it.
    const radius = Math.hypot(3.6, 0.025);
    const [c, s] = [Math.cos(Math.PI / 6), Math.sin(Math.PI / 6)];
    const gap = sweep(square(4 * c, 4 * s, 0.3));
    expect(gap?.gap).toBeCloseTo(4 - radius, 6);
    expect(Math.hypot(gap?.where.x ?? 0, gap?.where.y ?? 0)).toBeCloseTo(radius, 6);
    expect(Math.abs((gap?.atAngle ?? 0) - (Math.PI / 6 + Math.atan2(0.025, 3.6)))).toBeLessThan(1e-3);
  });

  test("the heel's corner passes a post on its own small circle", () => {
    // Heel corners (−0.06, ±): the one at off −0.025 draws a circle of 65 mm behind the hinge.
    const behind = { ...leaf, heel: -0.06 };
    const post = square(-0.3, -0.3, 0.2);
    const [gap] = sweepGaps({ ...behind, travel: { swing: "toward", openAngle: Math.PI / 2 } }, [
      { name: "post", outline: post },
    ]);
    // Nearest corner of the post: (−0.1, −0.1), passed when the heel's corner points at it (45° below −x).
    expect(gap?.gap).toBeCloseTo(Math.hypot(0.1, 0.1) - Math.hypot(0.06, 0.025), 6);
  });

  test("an end of the travel is looked at, and a thing run into is negative", () => {
    // Fully open the face stands at along = −25 mm; the pier's at −40 mm.
    expect(sweep(pier.outline)?.gap).toBeCloseTo(0.015, 6);
    expect(sweep(pier.outline)?.atAngle).toBeCloseTo(Math.PI / 2, 6);
    expect(sweep(square(1, 1, 0.5))?.gap).toBeLessThan(-0.2);
  });

  test("a box on the leaf sweeps too, and nothing without area is listed", () => {
    const strap = { alongFrom: 3.5, alongTo: 3.7, offFrom: 0.025, offTo: 0.05 };
    const [gap] = sweepGaps({ ...leaf, boxes: [strap] }, [{ name: "wall", outline: square(4, 0.5, 1) }]);
    expect(gap?.gap).toBeLessThan(Math.hypot(4, 0.5) - Math.hypot(3.7, 0.05) + 1e-6);
    expect(gap?.gap).toBeGreaterThan(0.25);
    expect(sweepGaps(leaf, [{ name: "line", outline: [at(4, 0), at(5, 0), at(6, 0)] }])).toEqual([]);
  });
});
