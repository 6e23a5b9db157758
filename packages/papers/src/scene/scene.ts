// A drawing as data, before it has a scale: what is drawn, in full size, and what each stroke stands for.

/** A place on a drawing [mm], x to the right and y down the page. In a scene full size, on a sheet paper size. */
export interface Spot {
  readonly x: number;
  readonly y: number;
}

/** A rectangle with its sides along the page [mm]. */
export interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** What a stroke or a text stands for. It decides line width, dashes and ink, and is its layer in a CAD file. */
export type Role =
  /** Things that stand still: posts, piers, walls. */
  | "fixed"
  | "hatch"
  | "leaf"
  /** The leaf or the ram where it also comes to be. */
  | "ghost"
  /** What moves by itself, or is chosen: the ram and its pins. */
  | "ram"
  | "hinge"
  | "centreline"
  /** The way that a point of the leaf takes. */
  | "sweep"
  | "dimension"
  /** Thin lines that lead to something or carry it. */
  | "leader"
  | "frame"
  | "text"
  /** Text that explains and may be passed over. */
  | "note"
  | "curve"
  /** Faint lines to read a chart by. */
  | "grid"
  /** Limits and failures only. */
  | "limit"
  /** Where to cut, or to lay one sheet over the next. */
  | "cut";

/** `paper` hides what lies below, `tint` is a wash of the role's own ink, `hatch` lines at 45° as for a cut body. */
export type Fill = "none" | "paper" | "tint" | "solid" | "hatch";

export type Anchor = "start" | "middle" | "end";

interface Part {
  readonly role: Role;
  /** What in the job it shows, such as `postPin` or `fixed[0]`: for touching it on a screen. */
  readonly part?: string;
}

export interface LineShape extends Part {
  readonly kind: "line";
  readonly from: Spot;
  readonly to: Spot;
}

export interface OutlineShape extends Part {
  readonly kind: "outline";
  readonly spots: readonly Spot[];
  readonly closed: boolean;
  readonly fill: Fill;
}

export interface CircleShape extends Part {
  readonly kind: "circle";
  readonly centre: Spot;
  readonly radius: number;
  readonly fill: Fill;
}

/** From one angle to the other, measured from +x toward +y [rad]; `toAngle` may be the smaller. */
export interface ArcShape extends Part {
  readonly kind: "arc";
  readonly centre: Spot;
  readonly radius: number;
  readonly fromAngle: number;
  readonly toAngle: number;
}

/** A mark of one size on paper whatever the scale: a pin with its centre lines, the hinge axis, a bare cross. */
export interface MarkShape extends Part {
  readonly kind: "mark";
  readonly mark: "pin" | "hinge" | "cross";
  readonly at: Spot;
}

export interface TextShape extends Part {
  readonly kind: "text";
  readonly at: Spot;
  readonly text: string;
  /** Height of the letters' em on paper [mm]. */
  readonly size: number;
  readonly anchor: Anchor;
  /** Clockwise as seen [rad]. */
  readonly turn: number;
  /** Moved by so much on paper [mm], along and across the text. */
  readonly shift: Spot;
  /** At a scale at which the text fits into this box (full size) it stands there instead, on a patch of paper. */
  readonly inside?: Box;
}

/**
 * A linear dimension: the distance of two spots along a direction, with extension lines, arrows and its text
 * above the dimension line.
 */
export interface DimensionShape extends Part {
  readonly kind: "dimension";
  readonly from: Spot;
  readonly to: Spot;
  /** Direction of the dimension line, from +x toward +y [rad]. */
  readonly direction: number;
  /** A spot that the dimension line would run through if `away` were 0. */
  readonly base: Spot;
  /** How far the line stands off `base` on paper [mm], positive on the side at +90° of the direction. */
  readonly away: number;
  readonly text: string;
}

export type Shape =
  | LineShape
  | OutlineShape
  | CircleShape
  | ArcShape
  | MarkShape
  | TextShape
  | DimensionShape;

/** A drawing in full size. `extent` holds its bodies; texts and dimensions, which depend on scale, stand out of it. */
export interface Scene {
  readonly shapes: readonly Shape[];
  readonly extent: Box;
}

/**
 * The smallest box round some spots.
 *
 * ### Example
 *   expect(boxRound([{ x: 1, y: 5 }, { x: -2, y: 7 }])).toEqual({ left: -2, top: 5, right: 1, bottom: 7 });
 */
export function boxRound(spots: readonly Spot[]): Box {
  if (spots.length === 0) throw new RangeError("boxRound found no spots; it expects at least one");
  const xs = spots.map((spot) => spot.x);
  const ys = spots.map((spot) => spot.y);
  return { left: Math.min(...xs), top: Math.min(...ys), right: Math.max(...xs), bottom: Math.max(...ys) };
}
