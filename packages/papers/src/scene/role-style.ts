import type { Role } from "./scene.ts";

/** How strokes and texts of a role look on white paper. */
export interface RoleStyle {
  /** Line width [mm]. */
  readonly width: number;
  /** Dash, gap, dash, gap … [mm]; empty for a continuous line. */
  readonly dashes: readonly number[];
  /** Ink, `#rrggbb`. */
  readonly ink: string;
  /** Ink of a wash of it. */
  readonly tint: string;
}

const ink = "#16202b";
const quiet = "#5b6470";
const accent = "#0f6b66";
const accentWash = "#e3efed";
const warning = "#b3541e";
const warningWash = "#f6e7dd";

// Two widths, 0.5 and 0.25 mm, and the line types of ISO 128-2 as remembered: continuous for edges, long dash
// and dot for axes and paths, long dash and two dots for where a moving part also comes to be.
const wide = 0.5;
const narrow = 0.25;
const dashDot = [5, 1.2, 0.6, 1.2];
const dashTwoDots = [5, 1.2, 0.6, 1.2, 0.6, 1.2];

/** The look of each role on paper: two line widths, ink, one accent for what moves, one colour for limits. */
export const roleStyles: Readonly<Record<Role, RoleStyle>> = {
  fixed: { width: wide, dashes: [], ink, tint: "#eef0f1" },
  hatch: { width: 0.18, dashes: [], ink: "#7b838c", tint: "#eef0f1" },
  leaf: { width: wide, dashes: [], ink, tint: "#f3f4f4" },
  ghost: { width: narrow, dashes: dashTwoDots, ink: quiet, tint: "#f6f6f6" },
  ram: { width: wide, dashes: [], ink: accent, tint: accentWash },
  hinge: { width: wide, dashes: [], ink, tint: "#ffffff" },
  centreline: { width: narrow, dashes: dashDot, ink: quiet, tint: "#ffffff" },
  sweep: { width: narrow, dashes: dashDot, ink: accent, tint: accentWash },
  dimension: { width: narrow, dashes: [], ink, tint: "#ffffff" },
  leader: { width: narrow, dashes: [], ink: quiet, tint: "#ffffff" },
  frame: { width: narrow, dashes: [], ink, tint: "#f4f3ee" },
  text: { width: narrow, dashes: [], ink, tint: "#ffffff" },
  note: { width: 0.13, dashes: [], ink: quiet, tint: "#f4f3ee" },
  curve: { width: wide, dashes: [], ink: accent, tint: accentWash },
  grid: { width: 0.13, dashes: [], ink: "#c4c9ce", tint: "#ffffff" },
  limit: { width: 0.35, dashes: [2, 1], ink: warning, tint: warningWash },
  cut: { width: narrow, dashes: [3, 1.5], ink: quiet, tint: "#f4f3ee" },
};
