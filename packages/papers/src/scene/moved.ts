import type { Scene, Shape, Spot } from "./scene.ts";

/**
 * A scene moved by so much [full-size mm].
 *
 * ### Example
 *   const line = { kind: "line" as const, role: "fixed" as const, from: { x: 0, y: 0 }, to: { x: 10, y: 0 } };
 *   const scene = movedScene({ shapes: [line], extent: { left: 0, top: 0, right: 10, bottom: 0 } }, { x: 5, y: -2 });
 *   expect(scene.extent).toEqual({ left: 5, top: -2, right: 15, bottom: -2 });
 *   expect(scene.shapes[0]).toMatchObject({ from: { x: 5, y: -2 } });
 */
export function movedScene(scene: Scene, by: Spot): Scene {
  const { left, top, right, bottom } = scene.extent;
  return {
    shapes: scene.shapes.map((shape) => movedShape(shape, by)),
    extent: { left: left + by.x, top: top + by.y, right: right + by.x, bottom: bottom + by.y },
  };
}

function movedShape(shape: Shape, by: Spot): Shape {
  const move = (spot: Spot): Spot => ({ x: spot.x + by.x, y: spot.y + by.y });
  switch (shape.kind) {
    case "line":
      return { ...shape, from: move(shape.from), to: move(shape.to) };
    case "outline":
      return { ...shape, spots: shape.spots.map(move) };
    case "circle":
    case "arc":
      return { ...shape, centre: move(shape.centre) };
    case "mark":
      return { ...shape, at: move(shape.at) };
    case "text": {
      const { inside } = shape;
      const moved = { ...shape, at: move(shape.at) };
      if (inside === undefined) return moved;
      const from = move({ x: inside.left, y: inside.top });
      const to = move({ x: inside.right, y: inside.bottom });
      return { ...moved, inside: { left: from.x, top: from.y, right: to.x, bottom: to.y } };
    }
    case "dimension":
      return { ...shape, from: move(shape.from), to: move(shape.to), base: move(shape.base) };
  }
}
