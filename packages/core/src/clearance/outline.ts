import earcut from "earcut";
import type { LeafBox } from "../leaf/leaf.ts";

/**
 * A convex polygon ready for distance work: corners counter-clockwise, and for the edge from corner i to
 * corner i+1 its outward unit normal, its offset along that normal and its length. Metres.
 */
export interface ConvexOutline {
  readonly count: number;
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly nx: Float64Array;
  readonly ny: Float64Array;
  readonly offset: Float64Array;
  readonly edge: Float64Array;
}

type Corner = { readonly x: number; readonly y: number };

const cross = (o: Corner, a: Corner, b: Corner) => (a.x - o.x) * (b.y - o.y) - (a.y - o.y) * (b.x - o.x);

/** Twice the signed area: positive when the corners run counter-clockwise. */
function doubleArea(corners: readonly Corner[]): number {
  let sum = 0;
  corners.forEach((a, i) => {
    const b = corners[(i + 1) % corners.length] as Corner;
    sum += a.x * b.y - a.y * b.x;
  });
  return sum;
}

function convexOutline(corners: readonly Corner[]): ConvexOutline {
  const count = corners.length;
  const outline = {
    count,
    x: Float64Array.from(corners, (corner) => corner.x),
    y: Float64Array.from(corners, (corner) => corner.y),
    nx: new Float64Array(count),
    ny: new Float64Array(count),
    offset: new Float64Array(count),
    edge: new Float64Array(count),
  };
  corners.forEach((a, i) => {
    const b = corners[(i + 1) % count] as Corner;
    const length = Math.hypot(b.x - a.x, b.y - a.y);
    outline.nx[i] = (b.y - a.y) / length;
    outline.ny[i] = (a.x - b.x) / length;
    outline.offset[i] = (a.x * (b.y - a.y) + a.y * (a.x - b.x)) / length;
    outline.edge[i] = length;
  });
  return outline;
}

/**
 * A simple polygon as convex pieces that cover it exactly: itself when convex, triangles otherwise.
 *
 * Frame and sense of turning are free; corners that repeat or lie on a straight edge are dropped. A polygon
 * without area gives no pieces. Crossing outlines are the caller's fault to find (the job file refuses them).
 *
 * ### Example
 *   const pier = [{ x: 0, y: 0 }, { x: 1, y: 0 }, { x: 1, y: 1 }, { x: 0, y: 1 }];
 *   expect(convexPieces(pier)).toHaveLength(1);
 *   const angle = [...pier.slice(0, 3), { x: 0.5, y: 1 }, { x: 0.5, y: 0.5 }, { x: 0, y: 0.5 }];
 *   expect(convexPieces(angle).length).toBeGreaterThan(1);
 */
export function convexPieces(polygon: readonly Corner[]): ConvexOutline[] {
  const size = Math.max(...polygon.map((corner) => Math.max(Math.abs(corner.x), Math.abs(corner.y))), 1e-9);
  const tiny = 1e-12 * size * size;
  const turned = doubleArea(polygon) < 0 ? [...polygon].reverse() : [...polygon];
  // Repeats go first: beside its own copy a corner would look straight, and both would be lost.
  const distinct = turned.filter((corner, i) => {
    const before = turned[(i + turned.length - 1) % turned.length] as Corner;
    return Math.hypot(corner.x - before.x, corner.y - before.y) > 1e-9 * size;
  });
  const corners = distinct.filter((corner, i) => {
    const before = distinct[(i + distinct.length - 1) % distinct.length] as Corner;
    const after = distinct[(i + 1) % distinct.length] as Corner;
    return Math.abs(cross(before, corner, after)) > tiny;
  });
  if (corners.length < 3 || Math.abs(doubleArea(corners)) <= tiny) return [];
  const isConvex = corners.every((corner, i) => {
    const next = corners[(i + 1) % corners.length] as Corner;
    return cross(corner, next, corners[(i + 2) % corners.length] as Corner) > 0;
  });
  if (isConvex) return [convexOutline(corners)];
  const triangles = earcut(corners.flatMap((corner) => [corner.x, corner.y]));
  const pieces: ConvexOutline[] = [];
  for (let i = 0; i + 2 < triangles.length; i += 3) {
    const three = [0, 1, 2].map((k) => corners[triangles[i + k] as number] as Corner);
    const area = doubleArea(three);
    if (Math.abs(area) <= tiny) continue;
    pieces.push(convexOutline(area < 0 ? three.reverse() : three));
  }
  return pieces;
}

/** A leaf box as an outline in the leaf's own axes. */
export function boxOutline(box: LeafBox): ConvexOutline[] {
  return convexPieces([
    { x: box.alongFrom, y: box.offFrom },
    { x: box.alongTo, y: box.offFrom },
    { x: box.alongTo, y: box.offTo },
    { x: box.alongFrom, y: box.offTo },
  ]);
}
