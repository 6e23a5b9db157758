import type { Job } from "./schema/job.ts";

const lineWidth = 110;

/**
 * A job as text: JSON with two spaces a level, key order kept, lists of numbers (and of number pairs) on one
 * line where they fit, closed by a line break. Equal jobs with equal key order give equal text.
 *
 * Reading the text gives the job back. Throws on values that JSON cannot hold (NaN, infinity, functions):
 * those are a caller's mistake.
 *
 * ### Example
 *   const leaf = { id: "east", hingeSide: "left" as const, swing: "toward" as const, openAngleDeg: 90, lengthMm: 3600, heelMm: 30, thicknessMm: 50, faceMm: 25 };
 *   const job = { format: "pintle-job" as const, version: 1 as const, leaves: [leaf] };
 *   const again = readJob(writeJob(job));
 *   expect(again.ok && again.job).toEqual(job);
 */
export function writeJob(job: Job): string {
  return jsonText(job);
}

/**
 * Any JSON value in the layout of a job file. See `writeJob`.
 *
 * ### Example
 *   expect(jsonText({ ranges: [[1, 2], [3, 4]] })).toBe('{\n  "ranges": [[1, 2], [3, 4]]\n}\n');
 */
export function jsonText(value: unknown): string {
  return `${printed(value, "", 0)}\n`;
}

function printed(value: unknown, indent: string, taken: number): string {
  if (Array.isArray(value)) return printedList(value, indent, taken);
  if (typeof value === "object" && value !== null) return printedObject(value, indent);
  return printedScalar(value);
}

function printedScalar(value: unknown): string {
  if (typeof value === "number") {
    if (!Number.isFinite(value)) throw new RangeError(`writeJob found ${value}; it expects finite numbers`);
    return Object.is(value, -0) ? "-0" : String(value);
  }
  if (value === null || typeof value === "string" || typeof value === "boolean") return JSON.stringify(value);
  throw new TypeError(`writeJob found a ${typeof value}; it expects JSON values`);
}

function isNumeric(value: unknown): boolean {
  return typeof value === "number" || (Array.isArray(value) && value.every(isNumeric));
}

function printedList(list: readonly unknown[], indent: string, taken: number): string {
  if (list.length === 0) return "[]";
  if (list.every(isNumeric)) {
    const line = onOneLine(list);
    if (indent.length + taken + line.length <= lineWidth) return line;
  }
  const deeper = `${indent}  `;
  const items = list.map((item) => `${deeper}${printed(item, deeper, 0)}`);
  return `[\n${items.join(",\n")}\n${indent}]`;
}

function onOneLine(list: readonly unknown[]): string {
  return `[${list.map((item) => (Array.isArray(item) ? onOneLine(item) : printedScalar(item))).join(", ")}]`;
}

function printedObject(value: object, indent: string): string {
  const deeper = `${indent}  `;
  const entries = Object.entries(value).filter(([, held]) => held !== undefined);
  if (entries.length === 0) return "{}";
  const lines = entries.map(([key, held]) => {
    const start = `${JSON.stringify(key)}: `;
    return `${deeper}${start}${printed(held, deeper, start.length)}`;
  });
  return `{\n${lines.join(",\n")}\n${indent}}`;
}
