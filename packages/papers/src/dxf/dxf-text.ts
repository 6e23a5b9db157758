import { withoutControls } from "../scene/one-line.ts";

/**
 * A text as it may stand in a DXF entity: on one line, so that it cannot bring group codes of its own, and with
 * the marks broken up that a CAD program would take for control codes (`%%`, `^`, `\U+`, `\M+`).
 *
 * ### Example
 *   expect(dxfText("gate\n0\nLINE %%u50 ^J")).toBe("gate 0 LINE % %u50 ^ J");
 */
export function dxfText(text: string): string {
  return withoutControls(text)
    .replace(/%(?=%)/g, "% ")
    .replace(/\^/g, "^ ")
    .replace(/\\(?=[UM]\+)/gi, "\\ ");
}
