import type { Point } from "../linkage/pins.ts";

/**
 * Other places where pins that fit the same readings may lie, as starts for the adjustment.
 *
 * Two tape lengths place a point where two circles meet, and they meet twice: mirrored in the line through
 * their centres. A length and an offset do the same in the line square to the offset. So for each pin the
 * starts are its images in every line that two of its references can make: through the hinge axis and the
 * other pin (as it stands at each turn of the leaf that was used), and along either axis through those.
 *
 * `unknowns` = (P along, P out, G along, G off [, open angle]); `turns` are the φ of the pin-to-pin
 * readings [rad]; `turnSign` is that of the travel. The open angle's image is where the pins are as far
 * apart again on the other side of dead centre.
 */
export function mirroredStarts(
  unknowns: readonly number[],
  turns: readonly number[],
  turnSign: 1 | -1,
): number[][] {
  const [x, y, along, off, openAngle] = unknowns as [number, number, number, number, number | undefined];
  const tail = openAngle === undefined ? [] : [openAngle];
  const post = { x, y };
  const leaf = { x: along, y: off };
  const starts = [
    ...images(post, [{ x: 0, y: 0 }, ...turns.map((turn) => turned(leaf, turn))]).map((p) => [
      p.x,
      p.y,
      along,
      off,
      ...tail,
    ]),
    ...images(leaf, [{ x: 0, y: 0 }, ...turns.map((turn) => turned(post, -turn))]).map((p) => [
      x,
      y,
      p.x,
      p.y,
      ...tail,
    ]),
  ];
  if (openAngle !== undefined) {
    const between = Math.atan2(y, x) - Math.atan2(off, along);
    starts.push([x, y, along, off, wrapped(2 * between * turnSign - openAngle)]);
  }
  return starts;
}

/** The sixteen ways to set each pin in one of the four quarters around the hinge, the start itself first. */
export function quarterStarts(unknowns: readonly number[]): number[][] {
  const signs = [1, -1];
  return signs.flatMap((a) =>
    signs.flatMap((b) =>
      signs.flatMap((c) => signs.map((d) => unknowns.map((value, i) => value * ([d, c, b, a][i] ?? 1)))),
    ),
  );
}

/** The angle within (−π, π] that is a whole number of turns away. */
export function wrapped(angle: number): number {
  const turn = 2 * Math.PI;
  const reduced = angle - turn * Math.round(angle / turn);
  return reduced <= -Math.PI ? reduced + turn : reduced;
}

function turned(point: Point, angle: number): Point {
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  return { x: point.x * cos - point.y * sin, y: point.x * sin + point.y * cos };
}

function images(point: Point, references: readonly Point[]): Point[] {
  const found: Point[] = [];
  references.forEach((from, i) => {
    found.push({ x: 2 * from.x - point.x, y: point.y }, { x: point.x, y: 2 * from.y - point.y });
    for (const to of references.slice(i + 1)) {
      const [ux, uy] = [to.x - from.x, to.y - from.y];
      const square = ux * ux + uy * uy;
      if (square === 0) continue;
      const share = ((point.x - from.x) * ux + (point.y - from.y) * uy) / square;
      found.push({ x: 2 * (from.x + share * ux) - point.x, y: 2 * (from.y + share * uy) - point.y });
    }
  });
  return found;
}
