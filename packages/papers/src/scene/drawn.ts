import type { Anchor, Fill, Role, Spot } from "./scene.ts";

// What a renderer gets: strokes and texts in paper millimetres, x to the right and y down. Marks, hatches and
// dimensions have become lines, so that every renderer draws the same ones.

interface Part {
  readonly role: Role;
  readonly part?: string;
}

/** A fill that a renderer knows; hatches are strokes by now. */
export type FlatFill = Exclude<Fill, "hatch">;

export interface DrawnPath extends Part {
  readonly kind: "path";
  readonly spots: readonly Spot[];
  readonly closed: boolean;
  readonly fill: FlatFill;
  /** False for an area without an edge. */
  readonly stroked: boolean;
}

/** Many short lines of one role. */
export interface DrawnStrokes extends Part {
  readonly kind: "strokes";
  readonly strokes: readonly (readonly [Spot, Spot])[];
}

export interface DrawnCircle extends Part {
  readonly kind: "circle";
  readonly centre: Spot;
  readonly radius: number;
  readonly fill: FlatFill;
}

/** Angles from +x toward +y [rad]; drawn from `fromAngle` to `toAngle`, whichever is larger. */
export interface DrawnArc extends Part {
  readonly kind: "arc";
  readonly centre: Spot;
  readonly radius: number;
  readonly fromAngle: number;
  readonly toAngle: number;
}

/** `at` is on the base line of the letters, at the text's start, middle or end. */
export interface DrawnText extends Part {
  readonly kind: "text";
  readonly at: Spot;
  readonly text: string;
  readonly size: number;
  readonly anchor: Anchor;
  /** Clockwise as seen [rad]. */
  readonly turn: number;
  readonly bold: boolean;
}

/** What is inside the box only. */
export interface DrawnClip {
  readonly kind: "clip";
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
  readonly items: readonly Drawn[];
}

export type Drawn = DrawnPath | DrawnStrokes | DrawnCircle | DrawnArc | DrawnText | DrawnClip;
