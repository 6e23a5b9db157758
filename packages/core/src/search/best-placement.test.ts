import { describe, expect, test, vi } from "vitest";
import { madeUpJob } from "../../independent/made-up-jobs.ts";
import { prepare } from "../placement/limits.ts";
import type { Reach, Span } from "../placement/reach.ts";
import { reserveOf } from "../placement/reserve.ts";
import { workedExample } from "../placement/worked-example.ts";
import { bestPlacement } from "./best-placement.ts";

vi.setConfig({ testTimeout: 60_000 });

const { situation, reach } = workedExample;

describe("[G12] what a search answers", () => {
  test("the reserve that it names is that of its placement, and lies below its ceiling", () => {
    const found = bestPlacement(situation, reach);
    if (found.status !== "found") throw new Error(`a placement expected, ${found.status} found`);
    expect(found.reserve).toBe(reserveOf(situation, found.placement).reserve);
    expect(found.ceiling).toBeGreaterThanOrEqual(found.reserve);
    expect(found.ceiling - found.reserve).toBeLessThanOrEqual(5e-4);
  });

  test("the same every time, and whatever was searched between", () => {
    const first = bestPlacement(situation, reach);
    bestPlacement(madeUpJob(5, "free").situation, madeUpJob(5, "free").reach);
    expect(bestPlacement(situation, reach)).toEqual(first);
    expect(bestPlacement(prepare(situation), reach)).toEqual(first);
  });

  test("a finer tolerance closes the ceiling in on the reserve", () => {
    const coarse = bestPlacement(situation, reach, { tolerance: 4e-4 });
    const fine = bestPlacement(situation, reach, { tolerance: 1e-4 });
    if (coarse.status !== "found" || fine.status !== "found") throw new Error("placements expected");
    expect(fine.ceiling - fine.reserve).toBeCloseTo(1e-4, 12);
    expect(fine.reserve).toBeLessThanOrEqual(coarse.ceiling);
    expect(coarse.reserve).toBeLessThanOrEqual(fine.ceiling);
  });

  test("told to stop, it says so and gives the best so far", () => {
    const stopped = bestPlacement(situation, reach, { signal: { aborted: true } });
    expect(stopped).toMatchObject({ status: "stopped", why: "aborted" });
    const [asked, signal] = [{ times: 0 }, { aborted: false }];
    const job = madeUpJob(1, "free");
    const late = bestPlacement(job.situation, job.reach, {
      signal,
      progress: () => {
        asked.times++;
        signal.aborted = true;
      },
    });
    expect(asked.times).toBe(1);
    expect(late).toMatchObject({ status: "stopped", why: "aborted" });
    if (late.status === "stopped" && late.best !== null) {
      expect(late.reserve).toBe(reserveOf(job.situation, late.best).reserve);
    }
  });

  test("at its limit of boxes it says so, never more", () => {
    const stopped = bestPlacement(situation, reach, { maxBoxes: 3 });
    expect(stopped).toMatchObject({ status: "stopped", why: "box-limit", boxes: 3 });
  });

  test("enough is enough, and then no ceiling is claimed that was not proved", () => {
    const point = (value: number): Span => ({ from: value, to: value, step: null });
    const fair = Array.from({ length: 20 }, (_, i) => ({
      bracket: `fair hole ${i}`,
      along: point(-0.16 - i / 1e4),
      out: point(0.15),
    }));
    const good = { bracket: "good hole", along: point(-0.154), out: point(0.145) };
    const holes = { ...reach, postPin: [...fair, good] };
    const full = bestPlacement(situation, holes);
    const quick = bestPlacement(situation, holes, { enough: 0.005 });
    if (full.status !== "found" || quick.status !== "found") throw new Error("placements expected");
    expect(full.cell.postBracket).toBe("good hole");
    expect(quick.reserve).toBeGreaterThanOrEqual(0.005);
    expect(quick.reserve).toBeLessThan(full.reserve - 1e-3);
    expect(quick.boxes).toBeLessThan(full.boxes);
    expect(quick.ceiling).toBeGreaterThanOrEqual(full.reserve);
  });

  test("progress never falls and ends at 1", () => {
    const shares: number[] = [];
    const job = madeUpJob(1, "free");
    bestPlacement(job.situation, job.reach, { progress: (share) => shares.push(share) });
    expect(shares.at(-1)).toBe(1);
    expect(shares.length).toBeGreaterThan(1);
    expect([...shares].sort((a, b) => a - b)).toEqual(shares);
  });
});

describe("[G12] [G16] when nothing fits", () => {
  test("a ram far too short: nothing fits, and the nearest miss is named", () => {
    const ram = { ...situation.ram, stroke: 0.1 };
    const found = bestPlacement({ ...situation, ram }, reach);
    expect(found.status).toBe("nothing-fits");
    if (found.status !== "nothing-fits" || found.nearest === null) throw new Error("a nearest miss expected");
    expect(reserveOf({ ...situation, ram }, found.nearest).feasible).toBe(false);
  });

  test("a leaf that runs into something leaves no placement, whatever the pins", () => {
    const at = (x: number, y: number) => ({ x, y });
    const wall = { name: "wall", outline: [at(1, 1), at(1.5, 1), at(1.5, 1.5), at(1, 1.5)] };
    const found = bestPlacement({ ...situation, fixed: [wall] }, reach);
    expect(found).toMatchObject({ status: "nothing-fits", boxes: 0 });
  });

  test("no site at all: nothing fits", () => {
    expect(bestPlacement(situation, { ...reach, postPin: [] })).toMatchObject({
      status: "nothing-fits",
      nearest: null,
    });
  });
});

describe("[G13] sites and steps", () => {
  const point = (value: number): Span => ({ from: value, to: value, step: null });

  test("a single possible placement is found and judged", () => {
    const only: Reach = {
      postPin: [{ bracket: "welded", along: point(-0.154), out: point(0.145) }],
      leafPin: [{ bracket: "lug", along: point(0.955), off: point(0.145) }],
      rise: 0,
    };
    const found = bestPlacement(situation, only);
    if (found.status !== "found") throw new Error(`a placement expected, ${found.status} found`);
    expect(found.reserve).toBe(reserveOf(situation, workedExample.roomy).reserve);
    expect(found.cell).toMatchObject({ postBracket: "welded", leafBracket: "lug" });
  });

  test("the best of many sites, even when it is the last of a hundred", () => {
    const poor = Array.from({ length: 100 }, (_, i) => ({
      bracket: `hole ${i}`,
      along: point(-0.2),
      out: point(0.2 + i / 1e4),
    }));
    const good = { bracket: "good hole", along: point(-0.154), out: point(0.145) };
    const found = bestPlacement(situation, { ...reach, postPin: [...poor, good] });
    if (found.status !== "found") throw new Error(`a placement expected, ${found.status} found`);
    expect(found.cell.postBracket).toBe("good hole");
  });

  test("misuse throws", () => {
    const backwards = { from: -0.06, to: -0.26, step: null };
    expect(() =>
      bestPlacement(situation, { ...reach, postPin: [{ bracket: "x", along: backwards, out: point(0.1) }] }),
    ).toThrow(/expected from ≤ to/);
  });
});

test("[G12] forty things beside the gate are no more than the program has room for", () => {
  const stones = Array.from({ length: 40 }, (_, i) => {
    const [x, y] = [-0.9 - 0.01 * (i % 8), 0.2 + 0.08 * Math.floor(i / 8)];
    return {
      name: `stone ${i}`,
      outline: [
        { x, y },
        { x: x + 0.004, y },
        { x, y: y + 0.004 },
      ],
    };
  });
  const bare = bestPlacement(situation, reach);
  const found = bestPlacement({ ...situation, fixed: stones }, reach);
  if (found.status !== "found" || bare.status !== "found") throw new Error("placements expected");
  // They stand clear, so they change nothing.
  expect(Math.abs(found.reserve - bare.reserve)).toBeLessThan(5e-4);
});
