import { pathBelow } from "../fault.ts";
import type { Job } from "../schema/job.ts";
import type { Origin } from "../schema/origin.ts";
import { appliedDefaults } from "./defaults.ts";

/** How well a value is known: taken on site, off a maker's sheet, assumed, or nobody said. */
export type Standing = "measured" | "makersSheet" | "assumed" | "notStated";

/** One value of a job with where it comes from. */
export interface ValueOrigin {
  readonly path: string;
  /** A number, a list of numbers (range, outline), or a text that carries an origin. */
  readonly value: unknown;
  readonly standing: Standing;
  /** True for a value that the job leaves out and the computation fills in; such a value is assumed. */
  readonly isDefault: boolean;
  /** Who, when, how, as written in the job; null when nothing is. */
  readonly origin: Origin | null;
}

type Keyed = Readonly<Record<string, unknown>>;

/**
 * Every number of a job with its origin, in document order, then the defaults that the computation adds.
 *
 * An `origin` entry speaks for its key and for all within, unless an entry nearer to the value says otherwise.
 *
 * Source: rule "a measured value can carry who, when, how" of the job file.
 *
 * ### Example
 *   const leaf = { id: "east", hingeSide: "left" as const, swing: "toward" as const, openAngleDeg: 90, lengthMm: 3600, heelMm: 30, thicknessMm: 50, faceMm: 25 };
 *   const measured = { ...leaf, origin: { lengthMm: { how: "tape" as const, who: "Ada" } } };
 *   const values = valueOrigins({ format: "pintle-job", version: 1, leaves: [measured] });
 *   expect(values.find((value) => value.path === "leaves[0].lengthMm")?.standing).toBe("measured");
 *   expect(values.find((value) => value.path === "leaves[0].heelMm")?.standing).toBe("notStated");
 */
export function valueOrigins(job: Job): ValueOrigin[] {
  const found: ValueOrigin[] = [];
  collect(job as Keyed, "", null, found);
  const defaults = appliedDefaults(job).map(
    ({ path, value }): ValueOrigin => ({ path, value, standing: "assumed", isDefault: true, origin: null }),
  );
  return [...found, ...defaults];
}

/**
 * The values of a job that nobody measured or read off a sheet: marked as assumed, or filled in by default.
 *
 * ### Example
 *   const leaf = { id: "east", hingeSide: "left" as const, swing: "toward" as const, openAngleDeg: 90, lengthMm: 3600, heelMm: 30, thicknessMm: 50, faceMm: 25 };
 *   const job = { format: "pintle-job" as const, version: 1 as const, leaves: [leaf] };
 *   expect(assumedValues(job).map((value) => value.path)).toEqual(["leaves[0].need.clearanceMm", "leaves[0].need.deadCentreDeg"]);
 */
export function assumedValues(job: Job): ValueOrigin[] {
  return valueOrigins(job).filter((value) => value.standing === "assumed");
}

function collect(part: Keyed, path: string, inherited: Origin | null, found: ValueOrigin[]): void {
  const origins = isKeyed(part.origin) ? (part.origin as Readonly<Record<string, Origin>>) : {};
  for (const [key, value] of Object.entries(part)) {
    // The version numbers the file format, not the gate.
    if (key === "origin" || (path === "" && key === "version")) continue;
    const stated = Object.hasOwn(origins, key) ? (origins[key] ?? null) : null;
    const origin = stated ?? inherited;
    const here = pathBelow(path, key);
    if (isKeyed(value)) collect(value, here, origin, found);
    else if (Array.isArray(value) && value.some(isKeyed)) {
      value.forEach((item, index) => {
        if (isKeyed(item)) collect(item, pathBelow(here, index), origin, found);
      });
    } else if (isNumeric(value) || stated) {
      found.push({ path: here, value, standing: standingOf(origin), isDefault: false, origin });
    }
  }
}

function standingOf(origin: Origin | null): Standing {
  if (!origin) return "notStated";
  return origin.how === "makersSheet" || origin.how === "assumed" ? origin.how : "measured";
}

function isKeyed(value: unknown): value is Keyed {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}

function isNumeric(value: unknown): boolean {
  return typeof value === "number" || (Array.isArray(value) && value.length > 0 && value.every(isNumeric));
}
