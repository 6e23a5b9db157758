import type { DrawnText } from "../scene/drawn.ts";
import type { Anchor, Role, Spot } from "../scene/scene.ts";

/** How a text on a sheet is set. */
export interface TextLook {
  readonly size: number;
  readonly bold?: boolean;
  readonly role?: Role;
  readonly anchor?: Anchor;
  readonly turn?: number;
}

/** One line with its base line at `at`. */
export function textAt(at: Spot, text: string, look: TextLook): DrawnText {
  return {
    kind: "text",
    role: look.role ?? "text",
    at,
    text,
    size: look.size,
    anchor: look.anchor ?? "start",
    turn: look.turn ?? 0,
    bold: look.bold ?? false,
  };
}

/** Base line to base line, as a multiple of the letter size. */
export const lineStep = 1.3;

/** Lines one below the other, the first base line one letter size below `top`. */
export function textLines(left: number, top: number, lines: readonly string[], look: TextLook): DrawnText[] {
  return lines.map((line, index) =>
    textAt({ x: left, y: top + look.size + index * look.size * lineStep }, line, look),
  );
}

/** Height that `textLines` takes [mm]. */
export const linesHeight = (count: number, size: number): number =>
  count === 0 ? 0 : size * (0.3 + count * lineStep);
