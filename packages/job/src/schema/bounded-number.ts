import "./no-eval.ts";
import * as z from "zod";

/** Bounds of a number in the job file, in its own unit. */
export interface Bounds {
  /** Smallest allowed value. */
  readonly from?: number;
  /** Value that must be exceeded. */
  readonly above?: number;
  /** Largest allowed value. */
  readonly upTo?: number;
  /** Value that must not be reached. */
  readonly below?: number;
}

/** Furthest that any point of a gate may lie from the hinge axis [mm]; past it a number is a slip of units. */
export const farthestMm = 20_000;

function boundsInWords(bounds: Bounds): string {
  const words: string[] = [];
  if (bounds.from !== undefined) words.push(`at least ${bounds.from}`);
  if (bounds.above !== undefined) words.push(`above ${bounds.above}`);
  if (bounds.upTo !== undefined) words.push(`at most ${bounds.upTo}`);
  if (bounds.below !== undefined) words.push(`below ${bounds.below}`);
  return words.join(" and ");
}

/**
 * Schema of one finite number with its unit and bounds.
 *
 * Its error message is what was expected, in plain words, ready for a fault; the same words without the
 * bounds become the description in the published schema. JSON has no NaN, and infinity is refused.
 */
export function boundedNumber(what: string, unit: string, bounds: Bounds) {
  const described = unit === "" ? what : `${what} [${unit}]`;
  const error = `a number${unit === "" ? "" : ` in ${unit}`}, ${boundsInWords(bounds)}: ${what}`;
  let schema = z.number({ error });
  if (bounds.from !== undefined) schema = schema.gte(bounds.from, { error });
  if (bounds.above !== undefined) schema = schema.gt(bounds.above, { error });
  if (bounds.upTo !== undefined) schema = schema.lte(bounds.upTo, { error });
  if (bounds.below !== undefined) schema = schema.lt(bounds.below, { error });
  return schema.meta({ description: described });
}

/** A length that must be larger than nothing [mm]. */
export function positiveMm(what: string, upTo: number) {
  return boundedNumber(what, "mm", { above: 0, upTo });
}

/** A length that may be nothing but not negative [mm]. */
export function distanceMm(what: string, upTo: number) {
  return boundedNumber(what, "mm", { from: 0, upTo });
}

/** A signed coordinate measured from the hinge axis [mm]. */
export function coordinateMm(what: string) {
  return boundedNumber(what, "mm", { from: -farthestMm, upTo: farthestMm });
}

/** A range `[from, to]` of a coordinate, from not larger than to [mm]. */
export function rangeMm(what: string) {
  const error = `two numbers [from, to] in mm, from not larger than to: ${what}`;
  const end = coordinateMm(what);
  return z
    .tuple([end, end], { error })
    .refine(([from, to]) => from <= to, { error })
    .meta({ description: `${what}, from and to [mm]` });
}

/** A non-empty list of numbers made by one schema. */
export function choices<T extends z.ZodType>(one: T, what: string) {
  const error = `a list of 1 to 200 choices: ${what}`;
  return z.array(one, { error }).min(1, { error }).max(200, { error }).meta({ description: what });
}

/** A short name or id that people read: not empty, at most 120 characters, no line breaks. */
export function shortText(what: string) {
  const error = `${what}: text of 1 to 120 characters on one line`;
  // biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what it keeps out
  const pattern = /^[^\u0000-\u001f\u007f]*\S[^\u0000-\u001f\u007f]*$/;
  return z.string({ error }).max(120, { error }).regex(pattern, { error }).meta({ description: what });
}

/** Free text. */
export function freeText(what: string) {
  const error = `${what}: text of at most 20000 characters`;
  return z.string({ error }).max(20_000, { error }).meta({ description: what });
}
