import type { Drawn } from "../scene/drawn.ts";
import type { Spot } from "../scene/scene.ts";
import { textAt } from "./lay-text.ts";

/** Room that the rulers take, from their left upper corner [mm]. */
export const rulerSize = { width: 152, height: 13 };

const inch = 25.4;

/**
 * Two rulers to be measured on the printed sheet before anything is taken off it: 100 mm and 4 in. Both start
 * at the same line.
 */
export function checkRuler({ x, y }: Spot): Drawn[] {
  const middle = y + 5.5;
  const up = (at: number, long: boolean): readonly [Spot, Spot] => [
    { x: x + at, y: middle },
    { x: x + at, y: middle - (long ? 3.5 : 2) },
  ];
  const down = (at: number, long: boolean): readonly [Spot, Spot] => [
    { x: x + at, y: middle },
    { x: x + at, y: middle + (long ? 3.5 : 2) },
  ];
  const millimetres = Array.from({ length: 11 }, (_, step) => up(step * 10, step % 5 === 0));
  const inches = Array.from({ length: 17 }, (_, step) => down((step * inch) / 4, step % 4 === 0));
  const base: readonly [Spot, Spot] = [
    { x, y: middle },
    { x: x + 4 * inch, y: middle },
  ];
  const look = { size: 2.4, role: "note" } as const;
  return [
    { kind: "strokes", role: "frame", strokes: [base, ...millimetres, ...inches] },
    textAt({ x: x + 4 * inch + 2, y: middle - 1.2 }, "100 mm from end to end", look),
    textAt({ x: x + 4 * inch + 2, y: middle + 3.2 }, "4 in from end to end", look),
    textAt({ x: x + 50, y: middle - 4.2 }, "50", { ...look, anchor: "middle" }),
    textAt({ x: x + 100, y: middle - 4.2 }, "100", { ...look, anchor: "middle" }),
    textAt({ x: x + 2 * inch, y: middle + 6 }, "2", { ...look, anchor: "middle" }),
    textAt({ x: x + 4 * inch, y: middle + 6 }, "4", { ...look, anchor: "middle" }),
    textAt({ x: x + 4 * inch + 37, y: middle - 1.2 }, "Measure both: if either is off by", { ...look }),
    textAt({ x: x + 4 * inch + 37, y: middle + 3.2 }, "more than 0.2 %, take nothing off this sheet.", {
      ...look,
    }),
  ];
}
