/** Above this product of lengths, items without a name are matched by their place alone. */
const mostCompared = 1_000_000;

/**
 * Which items of an old list live on in a new one: for each new index the old index, or null for an item that
 * is new. Each old item is used at most once.
 *
 * An item with an `id` or a `name` that is unique in both lists is followed by it, wherever it moved. Among
 * the others, equal ones are matched in order, and what is left between two matches is paired by place, so
 * that a corner that was dragged stays the same corner.
 */
export function alignLists(old: readonly unknown[], next: readonly unknown[]): (number | null)[] {
  const aligned: (number | null)[] = next.map(() => null);
  const oldByName = uniqueNames(old);
  const nextByName = uniqueNames(next);
  const oldRest: number[] = [];
  for (const [name, at] of nextByName) {
    const from = oldByName.get(name);
    if (from !== undefined) aligned[at] = from;
  }
  const used = new Set(aligned);
  for (const index of old.keys()) if (!used.has(index)) oldRest.push(index);
  const nextRest = [...next.keys()].filter((index) => aligned[index] === null);
  for (const [from, to] of pairs(oldRest, nextRest, old, next)) aligned[to] = from;
  return aligned;
}

function nameOf(item: unknown): string | null {
  if (typeof item !== "object" || item === null || Array.isArray(item)) return null;
  const { id, name } = item as { id?: unknown; name?: unknown };
  if (typeof id === "string") return `id ${id}`;
  return typeof name === "string" ? `name ${name}` : null;
}

function uniqueNames(list: readonly unknown[]): Map<string, number> {
  const found = new Map<string, number>();
  const repeated = new Set<string>();
  for (const [index, item] of list.entries()) {
    const name = nameOf(item);
    if (name === null) continue;
    if (found.has(name)) repeated.add(name);
    found.set(name, index);
  }
  for (const name of repeated) found.delete(name);
  return found;
}

function pairs(
  oldRest: readonly number[],
  nextRest: readonly number[],
  old: readonly unknown[],
  next: readonly unknown[],
): [number, number][] {
  const oldText = oldRest.map((index) => JSON.stringify(old[index]));
  const nextText = nextRest.map((index) => JSON.stringify(next[index]));
  const matches = oldRest.length === nextRest.length ? [] : commonInOrder(oldText, nextText);
  const found: [number, number][] = [];
  let fromStart = 0;
  let toStart = 0;
  for (const [from, to] of [...matches, [oldRest.length, nextRest.length] as const]) {
    for (let step = 0; fromStart + step < from && toStart + step < to; step += 1) {
      const a = oldRest[fromStart + step] as number;
      const b = nextRest[toStart + step] as number;
      if (mayBeTheSame(old[a], next[b])) found.push([a, b]);
    }
    if (from < oldRest.length) found.push([oldRest[from] as number, nextRest[to] as number]);
    fromStart = from + 1;
    toStart = to + 1;
  }
  return found;
}

/** Two things with different names are two things, even in the same place of the list. */
function mayBeTheSame(a: unknown, b: unknown): boolean {
  return nameOf(a) === nameOf(b) && Array.isArray(a) === Array.isArray(b);
}

/** A longest common subsequence as pairs of indices, ascending. */
function commonInOrder(a: readonly string[], b: readonly string[]): [number, number][] {
  if (a.length * b.length > mostCompared) return [];
  const width = b.length + 1;
  const longest = new Uint32Array((a.length + 1) * width);
  const at = (i: number, j: number) => longest[i * width + j] as number;
  for (let i = a.length - 1; i >= 0; i -= 1) {
    for (let j = b.length - 1; j >= 0; j -= 1) {
      longest[i * width + j] = a[i] === b[j] ? at(i + 1, j + 1) + 1 : Math.max(at(i + 1, j), at(i, j + 1));
    }
  }
  const found: [number, number][] = [];
  for (let i = 0, j = 0; i < a.length && j < b.length; ) {
    if (a[i] === b[j]) found.push([i++, j++]);
    else if (at(i + 1, j) >= at(i, j + 1)) i += 1;
    else j += 1;
  }
  return found;
}
