import type { Travel } from "../linkage/pins.ts";

/** An upright rectangle in the leaf's own axes [m]: the leaf itself, a rail, a strap, a kick plate. */
export interface LeafBox {
  readonly alongFrom: number;
  readonly alongTo: number;
  readonly offFrom: number;
  readonly offTo: number;
}

/**
 * One hinged gate leaf in plan (rule G3), metres.
 *
 * The panel is the rectangle along ∈ [heel, length], off ∈ [face − thickness, face]; `boxes` are things
 * fixed to it that stand proud of the panel.
 */
export interface Leaf {
  /** Hinge axis to the hinge end of the panel. */
  readonly heel: number;
  /** Hinge axis to the latch end of the panel (the toe radius, in plan along the leaf). */
  readonly length: number;
  readonly thickness: number;
  /** Hinge axis to the ram-side face; negative when the axis stands proud of that face. */
  readonly face: number;
  readonly boxes: readonly LeafBox[];
  readonly travel: Travel;
}

/** Something that stands still beside the gate: a pier, a wall, a post. Its outline is a simple polygon, fixed frame [m]. */
export interface FixedThing {
  readonly name: string;
  readonly outline: readonly { readonly x: number; readonly y: number }[];
}
