import type { Drawn } from "../scene/drawn.ts";

/** Paper that people have. */
export type PaperName = "a4" | "letter";

/** A page with everything on it, in paper millimetres: what a renderer needs and no more. */
export interface Sheet {
  readonly title: string;
  /** [mm] */
  readonly width: number;
  readonly height: number;
  readonly items: readonly Drawn[];
}

/** Width of a text set in the pack's font [mm]. */
export type MeasureText = (text: string, size: number, bold: boolean) => number;
