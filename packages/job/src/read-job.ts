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
 * Errors (returned): every fault at once, each with its path, what was found and what was expected. A text that
 * is not JSON, is too long (5 MB) or nests too deep, names another format or a version that cannot be read is
 * reported for that alone, since nothing else could be judged.
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
  if (!parsed.ok) return parsed;
  const judged = judgeDocument(parsed.value);
  if (parsed.repeated.length === 0) return judged;
  return { ok: false, faults: [...parsed.repeated, ...(judged.ok ? [] : judged.faults)] };
}

/**
 * Judges a document that is already parsed; `steps` are the migrations at hand, by default all that there are. The document is not changed.
 *
 * ### Example
 *   expect(judgeDocument({ format: "pintle-job", version: 9 })).toEqual({
 *     ok: false,
 *     faults: [{ path: "version", found: "9", expected: "a version that can be read: 1" }],
 *   });
 */
export function judgeDocument(value: unknown, steps: readonly Migration[] = migrations): ReadJob {
  if (typeof value !== "object" || value === null || Array.isArray(value)) {
    return {
      ok: false,
      faults: [{ path: "", found: foundInWords(value), expected: "a job, which is an object" }],
    };
  }
  const given = value as JsonObject;
  const format = ownValue(given, "format");
  // A format or version that is missing is one fault among others; a different one means another kind of file.
  if (typeof format === "string" && format !== jobFormat) {
    return {
      ok: false,
      faults: [{ path: "format", found: foundInWords(format), expected: `"${jobFormat}"` }],
    };
  }
  const version = ownValue(given, "version");
  if (version === undefined) return judgeCurrent(given);
  const migrated = migrate(given, steps, jobVersion);
  if (!migrated.ok) {
    const expected = `a version that can be read: ${migrated.readable.join(", ")}`;
    return { ok: false, faults: [{ path: "version", found: foundInWords(version), expected }] };
  }
  const judged = judgeCurrent(migrated.document);
  return judged.ok && migrated.from !== jobVersion ? { ...judged, migratedFrom: migrated.from } : judged;
}

function judgeCurrent(document: JsonObject): ReadJob {
  const judged = jobSchema.safeParse(document);
  const single = judged.success ? [] : schemaFaults(document, judged.error);
  const faults = [...single, ...jobFaults(document, single)];
  if (!judged.success || faults.length > 0) return { ok: false, faults };
  // The document itself, not what the schema returned: that one lacks the unknown keys.
  return { ok: true, job: document as unknown as Job, unknownKeys: unknownKeys(document, judged.data) };
}

function ownValue(document: JsonObject, key: string): unknown {
  return Object.hasOwn(document, key) ? document[key] : undefined;
}
