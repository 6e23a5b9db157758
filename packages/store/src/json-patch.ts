import type { Fault } from "@pintle/job";

/** One step of a JSON Patch (RFC 6902): the operations that change one place. */
export type PatchStep =
  | { readonly op: "add" | "replace"; readonly path: string; readonly value: unknown }
  | { readonly op: "remove"; readonly path: string };

export type Patched =
  | { readonly ok: true; readonly value: unknown }
  | { readonly ok: false; readonly fault: Fault };

type Holder = Record<string, unknown> | unknown[];

/**
 * A JSON value with a patch applied to it; the value itself stays as it is. Operations "add", "replace" and
 * "remove" of RFC 6902: "add" to a list inserts, "add" to an object replaces a key that is there.
 *
 * Errors (returned): the first step whose place does not exist; then nothing is applied (RFC 6902, section 5).
 */
export function patchedValue(value: unknown, steps: readonly PatchStep[]): Patched {
  let patched = value;
  for (const step of steps) {
    const keys = pointerKeys(step.path);
    const next = keys === null ? absent : changed(patched, keys, step);
    if (next === absent) {
      const expected = `a place that "${step.op}" can work on`;
      return { ok: false, fault: { path: step.path, found: "nothing", expected } };
    }
    patched = next;
  }
  return { ok: true, value: patched };
}

const absent = Symbol("absent");

/** Keys of a JSON Pointer (RFC 6901); null when it is none. */
function pointerKeys(pointer: string): string[] | null {
  if (pointer === "") return [];
  if (!pointer.startsWith("/")) return null;
  const keys = pointer.slice(1).split("/");
  return keys.map((key) => key.replaceAll("~1", "/").replaceAll("~0", "~"));
}

function changed(value: unknown, keys: readonly string[], step: PatchStep): unknown {
  const [key, ...rest] = keys;
  if (key === undefined) return step.op === "remove" ? absent : step.value;
  if (typeof value !== "object" || value === null) return absent;
  const holder = value as Holder;
  if (rest.length > 0) {
    const held = heldBy(holder, key);
    const below = held === absent ? absent : changed(held, rest, step);
    return below === absent ? absent : withKey(holder, key, below);
  }
  if (step.op === "add")
    return Array.isArray(holder) ? inserted(holder, key, step.value) : withKey(holder, key, step.value);
  if (heldBy(holder, key) === absent) return absent;
  return step.op === "replace" ? withKey(holder, key, step.value) : withoutKey(holder, key);
}

/** RFC 6901 section 4: digits without leading zeros. */
function indexOf(key: string): number {
  return /^(0|[1-9]\d*)$/.test(key) ? Number(key) : Number.NaN;
}

function heldBy(holder: Holder, key: string): unknown {
  if (Array.isArray(holder)) return indexOf(key) < holder.length ? holder[indexOf(key)] : absent;
  return Object.hasOwn(holder, key) ? holder[key] : absent;
}

function withKey(holder: Holder, key: string, value: unknown): Holder {
  if (Array.isArray(holder)) return holder.with(indexOf(key), value);
  const entries = Object.entries(holder);
  return Object.fromEntries(
    Object.hasOwn(holder, key)
      ? entries.map(([each, held]) => [each, each === key ? value : held])
      : [...entries, [key, value]],
  );
}

function withoutKey(holder: Holder, key: string): Holder {
  if (Array.isArray(holder)) return holder.toSpliced(indexOf(key), 1);
  return Object.fromEntries(Object.entries(holder).filter(([each]) => each !== key));
}

function inserted(list: readonly unknown[], key: string, value: unknown): unknown {
  const index = key === "-" ? list.length : indexOf(key);
  return index <= list.length ? list.toSpliced(index, 0, value) : absent;
}
