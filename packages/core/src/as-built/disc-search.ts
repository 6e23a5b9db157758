/** What is known about one point of the disc: whether it will do, and the radius around it within which nothing can do (0 when unknown). */
export interface Probe {
  readonly holds: boolean;
  readonly emptyWithin: number;
}

interface DiscSearch {
  /** Searched around (0, 0) [m]. */
  readonly radius: number;
  /** How near the answer is to the least distance [m]. */
  readonly accuracy: number;
  /** Side of the squares beyond which no finer look is taken where `emptyWithin` is unknown [m]. */
  readonly resolution: number;
  readonly probeLimit: number;
  readonly probe: (x: number, y: number) => Probe;
  /** Called now and then with the radius that is searched completely so far [m], and the number of probes. */
  readonly progress?: (searchedTo: number, probes: number) => void;
  readonly signal?: { readonly aborted: boolean };
}

type DiscOutcome =
  | {
      readonly kind: "found";
      readonly x: number;
      readonly y: number;
      readonly distance: number;
      readonly probes: number;
    }
  | { readonly kind: "none"; readonly probes: number }
  | {
      readonly kind: "stopped";
      readonly reason: "aborted" | "probeLimit";
      readonly searchedTo: number;
      readonly probes: number;
    };

interface Square {
  readonly x: number;
  readonly y: number;
  readonly half: number;
  /** Distance of its nearest point from the middle of the disc. */
  readonly nearest: number;
}

/**
 * The point nearest the middle of a disc at which something holds: best-first branch and bound on squares.
 *
 * The square nearest the middle is looked at next, so everything nearer than it has been settled; a square
 * is dropped when its middle's empty radius covers it, when it cannot beat what is found, or when it is as
 * small as is worth looking. Global to `accuracy` where empty radii are known, and otherwise for places where
 * it holds over a square of side `resolution` (`accuracy`, where they are known). Deterministic.
 */
export function nearestHolding(search: DiscSearch): DiscOutcome {
  const { radius, accuracy, resolution, progress, signal } = search;
  let probes = 0;
  let squares = 0;
  const probe = (x: number, y: number): Probe => {
    probes++;
    return search.probe(x, y);
  };
  const queue = new NearestFirst();
  queue.push({ x: 0, y: 0, half: radius, nearest: 0 });
  let best: { x: number; y: number } | null = null;
  let bestDistance = radius;
  for (let square = queue.pop(); square !== null; square = queue.pop()) {
    if (square.nearest > bestDistance - (best === null ? 0 : accuracy / 2)) break;
    if (squares++ % 64 === 0) progress?.(square.nearest, probes);
    if (signal?.aborted) return { kind: "stopped", reason: "aborted", searchedTo: square.nearest, probes };
    if (probes >= search.probeLimit)
      return { kind: "stopped", reason: "probeLimit", searchedTo: square.nearest, probes };
    const { holds, emptyWithin } = probe(square.x, square.y);
    const toCorner = square.half * Math.SQRT2;
    if (!holds && emptyWithin > toCorner) continue;
    const distance = Math.hypot(square.x, square.y);
    if (holds && distance <= bestDistance) {
      best = polished({ x: square.x, y: square.y }, accuracy, resolution, (x, y) => probe(x, y).holds);
      bestDistance = Math.hypot(best.x, best.y);
    }
    const smallest = !holds && emptyWithin === 0 ? resolution : accuracy;
    if (2 * square.half > smallest) for (const quarter of quarters(square)) queue.push(quarter);
  }
  return best === null
    ? { kind: "none", probes }
    : { kind: "found", ...best, distance: bestDistance, probes };
}

/** Draws a point that holds as near to the middle as it goes: along its ray, then by turning the ray, ever finer. */
function polished(
  from: { readonly x: number; readonly y: number },
  accuracy: number,
  resolution: number,
  holds: (x: number, y: number) => boolean,
): { x: number; y: number } {
  const fine = accuracy / 8;
  const at = (r: number, angle: number): boolean => holds(r * Math.cos(angle), r * Math.sin(angle));
  const pulledIn = (r: number, angle: number): number => {
    let [outer, inner] = [r, 0];
    // Bisection ends where just below fails; a nearer stretch beyond a thin gap is looked for at 95 % before settling.
    for (;;) {
      while (outer - inner > fine) {
        const middle = (outer + inner) / 2;
        if (at(middle, angle)) outer = middle;
        else inner = middle;
      }
      if (outer <= fine || !at(0.95 * outer, angle)) return outer;
      [outer, inner] = [0.95 * outer, 0];
    }
  };
  let angle = Math.atan2(from.y, from.x);
  let r = pulledIn(Math.hypot(from.x, from.y), angle);
  for (let sideways = 2 * resolution; sideways > fine; sideways /= 2) {
    for (let moved = true; moved; ) {
      moved = false;
      for (const sign of [1, -1]) {
        const turned = angle + (sign * sideways) / Math.max(r, resolution);
        if (r > fine && at(r - fine, turned)) {
          angle = turned;
          r = pulledIn(r - fine, turned);
          moved = true;
        }
      }
    }
  }
  return { x: r * Math.cos(angle), y: r * Math.sin(angle) };
}

function quarters({ x, y, half }: Square): Square[] {
  const h = half / 2;
  return [-h, h].flatMap((dx) =>
    [-h, h].map((dy) => {
      const [cx, cy] = [x + dx, y + dy];
      const nearest = Math.hypot(Math.max(Math.abs(cx) - h, 0), Math.max(Math.abs(cy) - h, 0));
      return { x: cx, y: cy, half: h, nearest };
    }),
  );
}

/** Binary heap of squares, the one nearest the middle on top; of equals the larger, so that order does not depend on history. */
class NearestFirst {
  readonly #heap: Square[] = [];

  push(square: Square): void {
    const heap = this.#heap;
    let i = heap.push(square) - 1;
    while (i > 0) {
      const parent = (i - 1) >> 1;
      if (!before(square, heap[parent] as Square)) break;
      heap[i] = heap[parent] as Square;
      i = parent;
    }
    heap[i] = square;
  }

  pop(): Square | null {
    const heap = this.#heap;
    const top = heap[0];
    const last = heap.pop();
    if (top === undefined || last === undefined) return null;
    if (heap.length === 0) return top;
    let i = 0;
    for (;;) {
      let child = 2 * i + 1;
      if (child >= heap.length) break;
      if (child + 1 < heap.length && before(heap[child + 1] as Square, heap[child] as Square)) child++;
      if (!before(heap[child] as Square, last)) break;
      heap[i] = heap[child] as Square;
      i = child;
    }
    heap[i] = last;
    return top;
  }
}

function before(a: Square, b: Square): boolean {
  return a.nearest < b.nearest || (a.nearest === b.nearest && a.half > b.half);
}
