/** A JSON object, as parsed. */
export type JsonObject = Record<string, unknown>;

/** Lifts a job document from one version to the next. One migration a file, listed in `migrations.ts`. */
export interface Migration {
  /** Version that it reads; it writes `from + 1`. */
  readonly from: number;
  /** What changes, in a few words. */
  readonly what: string;
  /** Receives a copy of its own, may change it, and returns the lifted document. The version key is set for it. */
  readonly lift: (document: JsonObject) => JsonObject;
}

export type Migrated =
  | { readonly ok: true; readonly document: JsonObject; readonly from: number }
  | { readonly ok: false; readonly readable: readonly number[] };

/**
 * Versions that the migrations can lift to `current` without a gap, and `current` itself, ascending.
 *
 * ### Example
 *   const lift = (document: JsonObject) => document;
 *   expect(readableVersions([{ from: 1, what: "nothing", lift }], 2)).toEqual([1, 2]);
 */
export function readableVersions(migrations: readonly Migration[], current: number): number[] {
  const versions = [current];
  for (let version = current - 1; migrations.some((one) => one.from === version); version -= 1) {
    versions.unshift(version);
  }
  return versions;
}

/**
 * Lifts a document step by step to the current version. The given document is never changed.
 *
 * Errors (returned): the versions that can be read, when the document's is none of them.
 *
 * ### Example
 *   const widen: Migration = { from: 1, what: "w becomes widthMm", lift: ({ w, ...rest }) => ({ ...rest, widthMm: w }) };
 *   expect(migrate({ version: 1, w: 3 }, [widen], 2)).toEqual({ ok: true, from: 1, document: { version: 2, widthMm: 3 } });
 *   expect(migrate({ version: 9 }, [widen], 2)).toEqual({ ok: false, readable: [1, 2] });
 */
export function migrate(document: JsonObject, migrations: readonly Migration[], current: number): Migrated {
  const readable = readableVersions(migrations, current);
  const from = document.version;
  if (typeof from !== "number" || !readable.includes(from)) return { ok: false, readable };
  if (from === current) return { ok: true, document, from };
  let lifted = JSON.parse(JSON.stringify(document)) as JsonObject;
  for (let version = from; version < current; version += 1) {
    const step = migrations.find((one) => one.from === version) as Migration;
    lifted = { ...step.lift(lifted), version: version + 1 };
  }
  return { ok: true, document: lifted, from };
}
