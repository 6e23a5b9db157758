import { jobFaults } from "./checks/job-checks.ts";
import { type Fault, foundInWords } from "./fault.ts";
import { parseJsonText } from "./json-text.ts";
import { type JsonObject, type Migration, migrate } from "./migrate/migration.ts";
import { migrations } from "./migrate/migrations.ts";
import { type Job, jobFormat, jobSchema, jobVersion } from "./schema/job.ts";
import { schemaFaults } from "./schema/schema-faults.ts";
import { unknownKeys } from "./schema/unknown-keys.ts";

export type ReadJob =
  | {
      readonly ok: true;
      /** The document as it was written, unknown keys included, no defaults put in. */
      readonly job: Job;
      /** Paths of keys that this version does not know; they are kept. */
      readonly unknownKeys: readonly string[];
      /** Version that the text had, when it was migrated up. */
      readonly migratedFrom?: number;
    }
  | { readonly ok: false; readonly faults: readonly Fault[] };

/**
 * Reads a job from text: parses, migrates, and judges it.
 *
 * Lengths stay in millimetres, angles in degrees, as the file holds them; `to-core` converts to SI.
 * Never throws for any text.
 *
 * Errors (returned): every fault at once, each with its path, what was found and what was expected.
 * A text that is not JSON, is longer than 5 MB, nests too deep, repeats a key, is of another format or of an
 * unknown version is reported for that alone, since nothing else could be judged.
 *
 * ### Example
 *   const read = readJob('{ "format": "pintle-job", "version": 1, "leaves": [] }');
 *   expect(read).toEqual({
 *     ok: false,
 *     faults: [{ path: "leaves", found: "an empty list", expected: "a list of 1 to 20 leaves" }],
 *   });
 */
export function readJob(text: string): ReadJob {
  const parsed = parseJsonText(text);
  return parsed.ok ? judgeDocument(parsed.value, migrations) : parsed;
}

/** Judges a document that is already parsed; `steps` are the migrations at hand. */
export function judgeDocument(value: unknown, steps: readonly Migration[]): ReadJob {
  const header = headerFault(value);
  if (header) return { ok: false, faults: [header] };
  const migrated = migrate(value as JsonObject, steps, jobVersion);
  if (!migrated.ok) {
    const found = foundInWords((value as JsonObject)["version"]);
    const expected = `a version that can be read: ${migrated.readable.join(", ")}`;
    return { ok: false, faults: [{ path: "version", found, expected }] };
  }
  const { document, from } = migrated;
  const judged = jobSchema.safeParse(document);
  const faults = mergedFaults(judged.success ? [] : schemaFaults(document, judged.error), jobFaults(document));
  if (!judged.success || faults.length > 0) return { ok: false, faults };
  const unknown = unknownKeys(document, judged.data);
  // The document itself, not what the schema returned: that one lacks the unknown keys.
  const job = document as unknown as Job;
  return from === jobVersion
    ? { ok: true, job, unknownKeys: unknown }
    : { ok: true, job, unknownKeys: unknown, migratedFrom: from };
}

function headerFault(value: unknown): Fault | null {
  if (typeof value !== "object" || value === null || Array.isArray(value)) {
    return { path: "", found: foundInWords(value), expected: "a job, which is an object" };
  }
  const format = Object.hasOwn(value, "format") ? (value as JsonObject)["format"] : undefined;
  if (format === jobFormat) return null;
  return { path: "format", found: foundInWords(format), expected: `"${jobFormat}"` };
}

/** A path that a single-value fault names already gets no second fault. */
function mergedFaults(single: readonly Fault[], between: readonly Fault[]): Fault[] {
  const named = new Set(single.map((fault) => fault.path));
  return [...single, ...between.filter((fault) => !named.has(fault.path))];
}
