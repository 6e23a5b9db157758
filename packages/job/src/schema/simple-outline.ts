type Corner = readonly [number, number];

/** What is wrong with an outline, or null when it is a simple polygon with an area. */
export interface OutlineFault {
  readonly found: string;
  readonly expected: string;
}

/**
 * Checks that corners joined in order make a simple polygon: edges meet only at shared corners and
 * enclose an area. The first corner may be repeated as the last.
 *
 * Every edge is compared with every other (quadratic; the schema allows 500 corners). Sides are judged
 * by plain floating-point cross products: corners are typed in millimetres, far from their rounding.
 */
export function outlineFault(outline: readonly Corner[]): OutlineFault | null {
  const corners = withoutClosingCorner(outline);
  const count = corners.length;
  if (count < 3)
    return { found: `${count} different corners`, expected: "an outline of at least 3 different corners" };
  const corner = (index: number): Corner => corners[index % count] as Corner;
  for (let i = 0; i < count; i += 1) {
    if (same(corner(i), corner(i + 1))) {
      return {
        found: `corner ${(i + 1) % count} repeats corner ${i}`,
        expected: "an outline that names each corner once",
      };
    }
  }
  for (let i = 0; i < count; i += 1) {
    for (let j = i + 1; j < count; j += 1) {
      if (edgesClash(corner, count, i, j)) {
        return {
          found: `the edge after corner ${i} meets the edge after corner ${j}`,
          expected: "an outline whose edges do not cross or touch each other",
        };
      }
    }
  }
  return null;
}

/** The corners without a last one that only repeats the first. */
export function withoutClosingCorner(outline: readonly Corner[]): readonly Corner[] {
  const first = outline[0];
  const last = outline.at(-1);
  return first && last && outline.length > 1 && same(first, last) ? outline.slice(0, -1) : outline;
}

function edgesClash(corner: (index: number) => Corner, count: number, i: number, j: number): boolean {
  const follows = j === i + 1 || (i === 0 && j === count - 1);
  if (!follows) return segmentsMeet(corner(i), corner(i + 1), corner(j), corner(j + 1));
  // Neighbours share a corner; they clash only when one folds back along the other.
  const shared = j === i + 1 ? corner(j) : corner(0);
  const before = j === i + 1 ? corner(i) : corner(j);
  const after = j === i + 1 ? corner(j + 1) : corner(1);
  const ahead =
    (shared[0] - before[0]) * (after[0] - shared[0]) + (shared[1] - before[1]) * (after[1] - shared[1]);
  return side(before, shared, after) === 0 && ahead < 0;
}

function same(a: Corner, b: Corner): boolean {
  return a[0] === b[0] && a[1] === b[1];
}

function side(a: Corner, b: Corner, c: Corner): number {
  return Math.sign((b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]));
}

function within(a: Corner, b: Corner, point: Corner): boolean {
  return (
    Math.min(a[0], b[0]) <= point[0] &&
    point[0] <= Math.max(a[0], b[0]) &&
    Math.min(a[1], b[1]) <= point[1] &&
    point[1] <= Math.max(a[1], b[1])
  );
}

function segmentsMeet(a: Corner, b: Corner, c: Corner, d: Corner): boolean {
  const [abc, abd, cda, cdb] = [side(a, b, c), side(a, b, d), side(c, d, a), side(c, d, b)];
  if (abc * abd < 0 && cda * cdb < 0) return true;
  return (
    (abc === 0 && within(a, b, c)) ||
    (abd === 0 && within(a, b, d)) ||
    (cda === 0 && within(c, d, a)) ||
    (cdb === 0 && within(c, d, b))
  );
}
