/**
 * The reserve once more, by brute force and from the rules alone (G4–G11): sampled travel, polygons laid in the
 * fixed frame and measured corner against edge, the sixteen corners of the box of errors (and points inside
 * for a closer look), bisection. Shares no code with the core. Millimetres and degrees, so that units cannot agree by luck.
 */

/** x, y of each corner in turn [mm]. */
export type Polygon = readonly number[];

export interface BruteJob {
  readonly toward: boolean;
  readonly openDeg: number;
  readonly leaf: readonly Polygon[];
  readonly tube: readonly { readonly from: number; readonly to: number; readonly half: number }[];
  readonly rodHalf: number;
  readonly shortest: number;
  readonly longest: number;
  /** Convex pieces of each fixed thing. */
  readonly fixed: readonly (readonly Polygon[])[];
  readonly rise: number;
  readonly clearance: number;
  readonly fixedClearance: number;
  readonly lever: number;
  readonly deadCentreDeg: number;
}

/** Post pin along, out; leaf pin along, off [mm]. */
export type FourPins = readonly [number, number, number, number];

function cornerToEdge(px: number, py: number, ax: number, ay: number, bx: number, by: number): number {
  const [ex, ey, vx, vy] = [bx - ax, by - ay, px - ax, py - ay];
  const t = Math.max(0, Math.min(1, (vx * ex + vy * ey) / (ex * ex + ey * ey)));
  const [dx, dy] = [vx - t * ex, vy - t * ey];
  return dx * dx + dy * dy;
}

/** Least overlap of the shadows on the normals of `a`'s edges; ≤ 0 when one of them parts the two. */
function shallowest(a: Polygon, b: Polygon): number {
  let depth = Number.POSITIVE_INFINITY;
  for (let i = 0; i < a.length; i += 2) {
    const j = (i + 2) % a.length;
    let nx = (a[j + 1] as number) - (a[i + 1] as number);
    let ny = (a[i] as number) - (a[j] as number);
    const size = Math.sqrt(nx * nx + ny * ny);
    nx /= size;
    ny /= size;
    let [lowA, highA, lowB, highB] = [Infinity, -Infinity, Infinity, -Infinity];
    for (let k = 0; k < a.length; k += 2) {
      const s = nx * (a[k] as number) + ny * (a[k + 1] as number);
      if (s < lowA) lowA = s;
      if (s > highA) highA = s;
    }
    for (let k = 0; k < b.length; k += 2) {
      const s = nx * (b[k] as number) + ny * (b[k + 1] as number);
      if (s < lowB) lowB = s;
      if (s > highB) highB = s;
    }
    depth = Math.min(depth, highA - lowB, highB - lowA);
    if (depth <= 0) return depth;
  }
  return depth;
}

/**
 * Distance of two convex polygons [mm]; minus the depth where they overlap. A pair that is parted by `enough`
 * is only said to be so, with any such number.
 */
export function polygonGap(a: Polygon, b: Polygon, enough = Number.POSITIVE_INFINITY): number {
  const one = shallowest(a, b);
  if (-one >= enough) return -one;
  if (one > 0) {
    const depth = Math.min(one, shallowest(b, a));
    if (depth > 0) return -depth;
  }
  let least = Number.POSITIVE_INFINITY;
  for (const [p, q] of [
    [a, b],
    [b, a],
  ] as const) {
    for (let i = 0; i < p.length; i += 2) {
      for (let k = 0; k < q.length; k += 2) {
        const m = (k + 2) % q.length;
        const gap = cornerToEdge(
          p[i] as number,
          p[i + 1] as number,
          q[k] as number,
          q[k + 1] as number,
          q[m] as number,
          q[m + 1] as number,
        );
        if (gap < least) least = gap;
      }
    }
  }
  return Math.sqrt(least);
}

interface Turned {
  readonly cos: number;
  readonly sin: number;
  readonly leaf: readonly Polygon[];
}

/** A job with its leaf laid out at every sampled angle. */
export interface SampledJob {
  readonly job: BruteJob;
  readonly turns: readonly Turned[];
}

export function sampleTravel(job: BruteJob, samples: number): SampledJob {
  const turns = Array.from({ length: samples }, (_, i) => {
    const turn = ((job.toward ? 1 : -1) * job.openDeg * Math.PI * i) / 180 / (samples - 1);
    const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
    const leaf = job.leaf.map((polygon) => {
      const turned: number[] = [];
      for (let k = 0; k < polygon.length; k += 2) {
        const [x, y] = [polygon[k] as number, polygon[k + 1] as number];
        turned.push(x * cos - y * sin, x * sin + y * cos);
      }
      return turned;
    });
    return { cos, sin, leaf };
  });
  return { job, turns };
}

/** A bar along the line from A in direction (ux, uy), from station `from` to `to`. */
function bar(
  ax: number,
  ay: number,
  ux: number,
  uy: number,
  from: number,
  to: number,
  half: number,
): Polygon {
  return [
    ax + from * ux - half * uy,
    ay + from * uy + half * ux,
    ax + from * ux + half * uy,
    ay + from * uy - half * ux,
    ax + to * ux + half * uy,
    ay + to * uy - half * ux,
    ax + to * ux - half * uy,
    ay + to * uy + half * ux,
  ];
}

/**
 * The worst room to spare [mm] of all limits over the sampled travel; negative when one is broken. Below
 * `enough` the first broken limit ends the look. A turn of sign of the lever counts as a broken dead centre.
 */
export function leastRoom(
  { job, turns }: SampledJob,
  pins: FourPins,
  enough = Number.NEGATIVE_INFINITY,
): number {
  const [px, py, d, e] = pins;
  const sinDead = Math.sin((Math.max(job.deadCentreDeg, 0.0573) * Math.PI) / 180);
  const g = Math.hypot(d, e);
  let room = Number.POSITIVE_INFINITY;
  let side = 0;
  for (const { cos, sin, leaf } of turns) {
    const [bx, by] = [d * cos - e * sin, d * sin + e * cos];
    const [vx, vy] = [bx - px, by - py];
    const plan = Math.sqrt(vx * vx + vy * vy);
    const length = Math.sqrt(plan * plan + job.rise * job.rise);
    const moment = px * by - py * bx;
    if (side === 0) side = Math.sign(moment);
    // Dead centre is an angle; 1000 × the excess of its sine stands for it, only its sign matters.
    room = Math.min(
      room,
      length - job.shortest,
      job.longest - length,
      (side * moment) / length - job.lever,
      1000 * ((side * moment) / (plan * g) - sinDead),
    );
    if (room < enough) return room;
    const [ux, uy, level] = [vx / plan, vy / plan, plan / length];
    let tubeEnd = 0;
    for (const { from, to, half } of job.tube) {
      tubeEnd = Math.max(tubeEnd, to);
      const tube = bar(px, py, ux, uy, from * level, to * level, half);
      for (const part of leaf)
        room = Math.min(room, polygonGap(tube, part, room + job.clearance) - job.clearance);
      for (const thing of job.fixed) {
        for (const part of thing)
          room = Math.min(room, polygonGap(tube, part, room + job.fixedClearance) - job.fixedClearance);
      }
    }
    if (length - 80 > tubeEnd) {
      const rod = bar(px, py, ux, uy, tubeEnd * level, plan - 80 * level, job.rodHalf);
      for (const part of leaf) room = Math.min(room, polygonGap(rod, part, room));
      for (const thing of job.fixed)
        for (const part of thing) room = Math.min(room, polygonGap(rod, part, room));
    }
    if (room < enough) return room;
  }
  return room;
}

/** Errors of size 1 to be tried: every combination of the given values in the four pin numbers, corners first. */
export function errorsOf(values: readonly number[]): FourPins[] {
  const all = values.flatMap((a) =>
    values.flatMap((b) => values.flatMap((c) => values.map((d): FourPins => [a, b, c, d]))),
  );
  const corner = (error: FourPins) => (error.every((part) => Math.abs(part) === 1) ? 0 : 1);
  return all.sort((a, b) => corner(a) - corner(b));
}

const off = (pins: FourPins, error: FourPins, by: number): FourPins => [
  pins[0] + by * error[0],
  pins[1] + by * error[1],
  pins[2] + by * error[2],
  pins[3] + by * error[3],
];

/** Whether every one of these errors, times `size`, keeps every limit. What fails is moved to the front. */
export function survives(sampled: SampledJob, pins: FourPins, size: number, errors: FourPins[]): boolean {
  for (const [i, error] of errors.entries()) {
    if (leastRoom(sampled, off(pins, error, size), 0) >= 0) continue;
    errors.splice(i, 1);
    errors.unshift(error);
    return false;
  }
  return true;
}

/** Reserve [mm] to `accuracy`; for a placement that breaks a limit, its worst room (negative). */
export function bruteReserve(
  sampled: SampledJob,
  pins: FourPins,
  errors: FourPins[],
  accuracy: number,
): number {
  const room = leastRoom(sampled, pins);
  if (room < 0) return room;
  // Most limits give way by 1 to 2 mm a millimetre of error.
  let [low, high] = [0, Math.max(room, accuracy)];
  while (high < 500 && survives(sampled, pins, high, errors)) [low, high] = [high, 1.5 * high];
  while (high - low > accuracy) {
    const middle = low === 0 ? 0.6 * high : 0.5 * (low + high);
    if (survives(sampled, pins, middle, errors)) low = middle;
    else high = middle;
  }
  return 0.5 * (low + high);
}
