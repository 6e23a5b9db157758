import { describe, expect, test, vi } from "vitest";
import { type MadeUpJob, madeUpJob } from "../../independent/made-up-jobs.ts";
import { seededRandom } from "../../independent/seeded-random.ts";
import type { Placement } from "../linkage/pins.ts";
import { prepare } from "../placement/limits.ts";
import type { Reach, Span } from "../placement/reach.ts";
import { pinsOf, placementOf, reserveCeiling, reserveOf } from "../placement/reserve.ts";
import { bestPlacement } from "./best-placement.ts";
import type { SearchResult } from "./search-result.ts";

// Other jobs than those that rivals search (seeds above 1000), and cheaper questions.

vi.setConfig({ testTimeout: 120_000 });

const kinds = ["free", "free", "stepped", "free", "mixed"] as const;
const jobs = Array.from({ length: 60 }, (_, i) => madeUpJob(1001 + i, kinds[i % kinds.length] ?? "free"));
const answers = new Map<MadeUpJob, SearchResult>();
const answerTo = (job: MadeUpJob): SearchResult => {
  const known = answers.get(job) ?? bestPlacement(job.situation, job.reach);
  answers.set(job, known);
  return known;
};
/** What is certain to be no less than the best reserve in reach [m]. */
const ceilingOf = (result: SearchResult): number =>
  result.status === "found" ? result.ceiling : result.status === "nothing-fits" ? 1e-5 : Number.NaN;

const places = ({ from, to, step }: Span, random: () => number): number =>
  step === null
    ? from + (to - from) * random()
    : from + step * Math.floor(random() * (Math.floor((to - from) / step + 1e-9) + 1));

function drawn({ postPin, leafPin, rise }: Reach, random: () => number): Placement {
  const post = postPin[Math.floor(random() * postPin.length)];
  const leaf = leafPin[Math.floor(random() * leafPin.length)];
  if (post === undefined || leaf === undefined) throw new Error("sites expected");
  return {
    postPin: { along: places(post.along, random), out: places(post.out, random) },
    leafPin: { along: places(leaf.along, random), off: places(leaf.off, random) },
    rise,
  };
}

const onStep = ({ from, to, step }: Span, value: number): boolean => {
  if (value < from - 1e-9 || value > to + 1e-9) return false;
  return step === null || Math.abs((value - from) / step - Math.round((value - from) / step)) < 1e-6;
};

test("[G12] there are jobs with an answer and jobs without", () => {
  const found = jobs.filter((job) => answerTo(job).status === "found").length;
  expect(jobs.filter((job) => answerTo(job).status === "stopped")).toEqual([]);
  expect(found).toBeGreaterThan(35);
  expect(found).toBeLessThan(60);
});

test("[G12] no placement drawn from reach has a reserve above the ceiling", () => {
  const random = seededRandom(2024);
  let fitting = 0;
  for (const job of jobs) {
    const result = answerTo(job);
    const prepared = prepare(job.situation);
    const look = (placement: Placement) => {
      const { reserve, feasible } = reserveOf(prepared, placement);
      if (feasible) fitting++;
      if (reserve > ceilingOf(result)) {
        throw new Error(`${job.name}: ${reserve} above ${ceilingOf(result)} at ${JSON.stringify(placement)}`);
      }
    };
    for (let i = 0; i < 150; i++) look(drawn(job.reach, random));
    // And near the answer, where the competition is.
    if (result.status !== "found") continue;
    const pins = pinsOf(result.placement);
    for (let i = 0; i < 150; i++) {
      const near = pins.map((pin, j) => {
        const { low, high, step } = result.cell;
        const moved = pin + (step[j] === 0 ? (random() - 0.5) * 0.01 : 0);
        return Math.min(Math.max(moved, low[j] ?? moved), high[j] ?? moved);
      });
      const site = result.cell.step.every((step) => step === 0);
      if (site) look(placementOf(near, job.reach.rise));
    }
  }
  expect(fitting).toBeGreaterThan(500);
});

test("[G13] the answer lies in reach, on its brackets' steps", () => {
  for (const job of jobs) {
    const result = answerTo(job);
    if (result.status !== "found") continue;
    const { postPin, leafPin } = result.placement;
    expect(
      job.reach.postPin.some(({ along, out }) => onStep(along, postPin.along) && onStep(out, postPin.out)),
    ).toBe(true);
    expect(
      job.reach.leafPin.some(({ along, off }) => onStep(along, leafPin.along) && onStep(off, leafPin.off)),
    ).toBe(true);
  }
});

describe("[G12] more room never hurts", () => {
  const few = jobs.slice(0, 30);

  test("a longer stroke", () => {
    for (const job of few) {
      const { ram } = job.situation;
      const longer = bestPlacement(
        { ...job.situation, ram: { ...ram, stroke: ram.stroke + 0.05 } },
        job.reach,
      );
      const before = answerTo(job);
      if (before.status === "found") expect(ceilingOf(longer)).toBeGreaterThanOrEqual(before.reserve);
    }
  });

  test("a wider reach", () => {
    const wider = ({ from, to, step }: Span): Span =>
      step === null && to > from ? { from: from - 0.02, to: to + 0.03, step } : { from, to, step };
    for (const job of few) {
      const { postPin, leafPin, rise } = job.reach;
      const found = bestPlacement(job.situation, {
        postPin: postPin.map((site) => ({ ...site, along: wider(site.along), out: wider(site.out) })),
        leafPin: leafPin.map((site) => ({ ...site, along: wider(site.along), off: wider(site.off) })),
        rise,
      });
      const before = answerTo(job);
      if (before.status === "found") expect(ceilingOf(found)).toBeGreaterThanOrEqual(before.reserve);
    }
  });

  test("less asked for", () => {
    for (const job of few) {
      const { need } = job.situation;
      const eased = { ...need, clearance: need.clearance - 0.005, lever: need.lever - 0.01 };
      const found = bestPlacement({ ...job.situation, need: eased }, job.reach);
      const before = answerTo(job);
      if (before.status === "found") expect(ceilingOf(found)).toBeGreaterThanOrEqual(before.reserve);
    }
  });
});

test("[G12] all lengths times k: the best reserve times k", () => {
  const k = 1.7;
  for (const job of jobs.slice(0, 20)) {
    const before = answerTo(job);
    const { leaf, ram, fixed, need } = job.situation;
    const span = ({ from, to, step }: Span): Span => ({
      from: k * from,
      to: k * to,
      step: step === null ? null : k * step,
    });
    // The rod's 80 mm at the leaf pin are a fixed length, so a rod that touches nothing is searched with.
    const thin = { ...ram, rodHalfWidth: 1e-4 };
    const own = bestPlacement({ ...job.situation, ram: thin }, job.reach);
    const scaled = bestPlacement(
      {
        leaf: {
          ...leaf,
          heel: k * leaf.heel,
          length: k * leaf.length,
          thickness: k * leaf.thickness,
          face: k * leaf.face,
          boxes: leaf.boxes.map((box) => ({
            alongFrom: k * box.alongFrom,
            alongTo: k * box.alongTo,
            offFrom: k * box.offFrom,
            offTo: k * box.offTo,
          })),
        },
        ram: {
          ...thin,
          retracted: k * ram.retracted,
          stroke: k * ram.stroke,
          rodHalfWidth: k * thin.rodHalfWidth,
          tube: ram.tube.map((t) => ({ from: k * t.from, to: k * t.to, halfWidth: k * t.halfWidth })),
        },
        fixed: fixed.map(({ name, outline }) => ({
          name,
          outline: outline.map(({ x, y }) => ({ x: k * x, y: k * y })),
        })),
        need: {
          ...need,
          clearance: k * need.clearance,
          fixedClearance: k * need.fixedClearance,
          lever: k * need.lever,
          sweep: k * need.sweep,
        },
      },
      {
        postPin: job.reach.postPin.map((site) => ({ ...site, along: span(site.along), out: span(site.out) })),
        leafPin: job.reach.leafPin.map((site) => ({ ...site, along: span(site.along), off: span(site.off) })),
        rise: k * job.reach.rise,
      },
    );
    expect(scaled.status).toBe(own.status);
    expect(before.status === "found" ? before.reserve : 0).toBeLessThanOrEqual(ceilingOf(own));
    if (own.status !== "found" || scaled.status !== "found" || scaled.ceiling > reserveCeiling) continue;
    expect(scaled.reserve).toBeLessThanOrEqual(k * own.ceiling + 1e-6);
    expect(scaled.ceiling).toBeGreaterThanOrEqual(k * own.reserve - 1e-6);
  }
});
