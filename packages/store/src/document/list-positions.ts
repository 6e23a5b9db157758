/**
 * Positions for `count` items between two neighbours (null: none on that side), ascending and evenly spread.
 * Null when there is no room left: neighbours that two people put at one position, or doubles too close.
 */
function positionsBetween(before: number | null, after: number | null, count: number): number[] | null {
  const steps = Array.from({ length: count }, (_, index) => index + 1);
  if (before === null && after === null) return steps;
  if (after === null) return steps.map((step) => (before as number) + step);
  if (before === null) return steps.map((step) => after - (count + 1 - step));
  const found = steps.map((step) => before + ((after - before) * step) / (count + 1));
  const rising = [before, ...found, after].every(
    (at, index, all) => index === 0 || (all[index - 1] as number) < at,
  );
  return rising ? found : null;
}

/**
 * Positions that put a list in a wanted order while as many items as possible keep theirs. `old` holds the
 * present position of each item in the wanted order, null for a new one.
 */
export function positionsInOrder(old: readonly (number | null)[]): number[] {
  const kept = longestRising(old);
  const found: number[] = [];
  for (let start = 0; start < old.length; ) {
    if (kept.has(start)) {
      found.push(old[start] as number);
      start += 1;
      continue;
    }
    let end = start;
    while (end < old.length && !kept.has(end)) end += 1;
    const between = positionsBetween(
      found.at(-1) ?? null,
      end < old.length ? (old[end] as number) : null,
      end - start,
    );
    // Without room the whole list is numbered anew.
    if (between === null) return old.map((_, index) => index + 1);
    found.push(...between);
    start = end;
  }
  return found;
}

/** Indices of a longest strictly rising subsequence of the positions that there are. */
function longestRising(old: readonly (number | null)[]): Set<number> {
  const ends: number[] = [];
  const previous: (number | undefined)[] = [];
  for (const [index, at] of old.entries()) {
    if (at === null) continue;
    let length = ends.length;
    while (length > 0 && (old[ends[length - 1] as number] as number) >= at) length -= 1;
    previous[index] = ends[length - 1];
    ends[length] = index;
  }
  const kept = new Set<number>();
  for (let index = ends.at(-1); index !== undefined; index = previous[index]) kept.add(index);
  return kept;
}
