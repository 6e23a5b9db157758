import { afterAll, describe, expect, test, vi } from "vitest";
import { bestPlacement } from "../src/index.ts";
import type { FourPins } from "./brute-reserve.ts";
import { madeUpJob } from "./made-up-jobs.ts";
import { carefulReserve, rivalSearch } from "./rival-search.ts";

// Rivals: DIRECT_L and CRS2_LM with SBPLX of nlopt-js 0.1.1 (a port of the NLopt library), and a coarse-to-fine
// grid; a full count for brackets with steps. All judge by brute-reserve.ts, which shares no code with the core.

vi.setConfig({ testTimeout: 120_000 });

/** No rival may beat the search by more than this; what the search promises is less [mm]. */
const promised = 0.5;
/** The brute force has 121 turns and errors at thirds of their box: this much may it differ by [mm]. */
const agreement = 0.1;

const kinds = ["free", "free", "free", "stepped", "mixed"] as const;
const jobs = Array.from({ length: 56 }, (_, i) => madeUpJob(i + 1, kinds[(i + 1) % kinds.length] ?? "free"));

describe("[G12] [G13] no rival finds a better placement", () => {
  const seen = { found: 0, nothing: 0, reached: 0, unaided: 0 };

  test.each(jobs.map((job) => [job.name, job] as const))("%s", async (_name, job) => {
    const answer = bestPlacement(job.situation, job.reach);
    expect(answer.status).not.toBe("stopped");
    if (answer.status !== "found") {
      seen.nothing++;
      const { best } = await rivalSearch(job, null);
      // A rival may find what fits by a hair: the search does not tell a hundredth of a millimetre from nothing.
      expect(best?.reserve ?? 0).toBeLessThan(agreement);
      return;
    }
    seen.found++;
    const { postPin, leafPin } = answer.placement;
    const pins = [postPin.along, postPin.out, leafPin.along, leafPin.off].map(
      (m) => 1000 * m,
    ) as unknown as FourPins;
    const ours = 1000 * answer.reserve;
    expect(Math.abs(carefulReserve(job, pins) - ours)).toBeLessThan(agreement);
    const { best, unaided } = await rivalSearch(job, pins);
    expect(best?.reserve ?? 0).toBeLessThan(ours + promised);
    if (unaided !== null) seen.unaided++;
    if (unaided !== null && unaided.reserve > ours - 1) seen.reached++;
  });

  afterAll(() => {
    // The rivals must be worth their name, and the jobs of both kinds.
    expect(seen.found).toBeGreaterThan(35);
    expect(seen.nothing).toBeGreaterThan(4);
    expect(seen.reached).toBeGreaterThan(0.5 * seen.found);
  });
});
