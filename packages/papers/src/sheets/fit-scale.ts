import type { Display } from "@pintle/job";
import { drawScene } from "../scene/draw-scene.ts";
import type { Drawn } from "../scene/drawn.ts";
import type { Box, Scene, Spot } from "../scene/scene.ts";
import { boxRound } from "../scene/scene.ts";
import { roughTextWidth } from "../scene/text-width.ts";

// Scales that rules are made for: 1, 2 and 5 with tens (ISO 5455, as remembered) and those between them that are
// common practice, and feet-and-inches scales.
const scales: Record<Display, readonly number[]> = {
  metric: [1, 2, 5, 10, 15, 20, 25, 50, 100, 200],
  us: [1, 2, 4, 8, 12, 16, 24, 32, 48, 64, 96, 128, 192],
};

/** A scene as it lies in a box on paper. */
export interface FittedScene {
  readonly denominator: number;
  readonly items: readonly Drawn[];
}

/**
 * The scene at the largest usual scale at which all of it, dimensions and texts included, is inside the box,
 * centred there. At the smallest usual scale it may stand out; a gate does not.
 */
export function fitScene(scene: Scene, box: Box, display: Display): FittedScene {
  const usual = scales[display];
  for (const denominator of usual) {
    const round = drawnBox(drawScene(scene, { denominator, origin: { x: 0, y: 0 } }));
    const isLast = denominator === usual[usual.length - 1];
    const fits =
      round.right - round.left <= box.right - box.left && round.bottom - round.top <= box.bottom - box.top;
    if (!fits && !isLast) continue;
    const origin = {
      x: (box.left + box.right - round.left - round.right) / 2,
      y: (box.top + box.bottom - round.top - round.bottom) / 2,
    };
    return { denominator, items: drawScene(scene, { denominator, origin }) };
  }
  throw new Error("fitScene found no usual scales");
}

/** The box round everything that is drawn, texts by their rough width [mm]. */
function drawnBox(items: readonly Drawn[]): Box {
  return boxRound(items.flatMap(spotsOf));
}

function spotsOf(item: Drawn): readonly Spot[] {
  switch (item.kind) {
    case "path":
      return item.spots;
    case "strokes":
      return item.strokes.flat();
    case "circle":
    case "arc": {
      const { centre, radius } = item;
      const from = item.kind === "arc" ? item.fromAngle : 0;
      const by = item.kind === "arc" ? item.toAngle - item.fromAngle : 2 * Math.PI;
      return Array.from({ length: 33 }, (_, step) => ({
        x: centre.x + radius * Math.cos(from + (by * step) / 32),
        y: centre.y + radius * Math.sin(from + (by * step) / 32),
      }));
    }
    case "text": {
      const width = roughTextWidth(item.text, item.size);
      const start = item.anchor === "start" ? 0 : item.anchor === "middle" ? -width / 2 : -width;
      const cos = Math.cos(item.turn);
      const sin = Math.sin(item.turn);
      const on = (along: number, down: number): Spot => ({
        x: item.at.x + along * cos - down * sin,
        y: item.at.y + along * sin + down * cos,
      });
      return [start, start + width].flatMap((along) => [on(along, -item.size), on(along, item.size * 0.3)]);
    }
    case "clip":
      return [
        { x: item.left, y: item.top },
        { x: item.right, y: item.bottom },
      ];
  }
}
