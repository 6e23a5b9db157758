import type { FixedThing } from "../leaf/leaf.ts";

/**
 * A fixed thing with a pocket of `depth` cut into its ram-side face over its whole width: everything further
 * out than (its furthest `out` − depth) is taken away. Frame: rule G1, metres.
 *
 * ### Example
 *   const pier = { name: "pier", outline: [{ x: -0.4, y: -0.2 }, { x: 0, y: -0.2 }, { x: 0, y: 0.2 }, { x: -0.4, y: 0.2 }] };
 *   const cut = withPocket(pier, 0.05);
 *   expect(Math.max(...cut.outline.map((corner) => corner.y))).toBeCloseTo(0.15, 12);
 */
export function withPocket(thing: FixedThing, depth: number): FixedThing {
  const floor = Math.max(...thing.outline.map((corner) => corner.y)) - depth;
  const kept: { x: number; y: number }[] = [];
  thing.outline.forEach((corner, i) => {
    const next = thing.outline[(i + 1) % thing.outline.length] as { x: number; y: number };
    if (corner.y <= floor) kept.push(corner);
    if (corner.y <= floor !== next.y <= floor) {
      const share = (floor - corner.y) / (next.y - corner.y);
      kept.push({ x: corner.x + share * (next.x - corner.x), y: floor });
    }
  });
  return { ...thing, outline: kept };
}
