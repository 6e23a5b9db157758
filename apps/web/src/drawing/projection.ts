/** A point of the plan [mm] in the leaf's frame (rule G1), or a point of the screen [px, y down]. */
export interface Spot {
  readonly x: number;
  readonly y: number;
}

/** What part of the plan is looked at: the plan point in the middle [mm], and pixels per millimetre. */
export interface View {
  readonly centre: Spot;
  readonly scale: number;
}

/** Plan to screen and back: to scale, mirrored for the hinge side and for the side the reader stands on. */
export interface Projection {
  readonly width: number;
  readonly height: number;
  readonly scale: number;
  readonly flipX: 1 | -1;
  readonly flipY: 1 | -1;
  readonly toScreen: (spot: Spot) => Spot;
  readonly toPlan: (spot: Spot) => Spot;
}

export interface Paper {
  readonly width: number;
  readonly height: number;
}

/**
 * Seen from above. The reader stands on the ram's side unless `fromOtherSide`: y then runs down the page, and x
 * to the right when the hinge is on the left. Standing on the other side turns the plan by half a turn.
 */
export function projection(
  view: View,
  paper: Paper,
  hingeSide: "left" | "right",
  fromOtherSide: boolean,
): Projection {
  const turned = fromOtherSide ? -1 : 1;
  const flipX = (hingeSide === "left" ? turned : -turned) as 1 | -1;
  const flipY = turned as 1 | -1;
  const { centre, scale } = view;
  return {
    ...paper,
    scale,
    flipX,
    flipY,
    toScreen: ({ x, y }) => ({
      x: paper.width / 2 + flipX * (x - centre.x) * scale,
      y: paper.height / 2 + flipY * (y - centre.y) * scale,
    }),
    toPlan: ({ x, y }) => ({
      x: centre.x + (flipX * (x - paper.width / 2)) / scale,
      y: centre.y + (flipY * (y - paper.height / 2)) / scale,
    }),
  };
}

/** The view that shows all these plan points, with a margin [px] for what is written beside them. */
export function viewOf(spots: readonly Spot[], paper: Paper, margin: number): View {
  const xs = spots.map((spot) => spot.x);
  const ys = spots.map((spot) => spot.y);
  const [left, right] = [Math.min(...xs), Math.max(...xs)];
  const [top, bottom] = [Math.min(...ys), Math.max(...ys)];
  const room = (side: number) => Math.max(80, side - 2 * margin);
  const scale = Math.min(room(paper.width) / (right - left || 1), room(paper.height) / (bottom - top || 1));
  return { centre: { x: (left + right) / 2, y: (top + bottom) / 2 }, scale };
}

const [smallestScale, largestScale] = [0.01, 12];

/** The view zoomed by `factor`, the plan point under the screen point `at` staying where it is. */
export function zoomedAt(view: View, on: Projection, at: Spot, factor: number): View {
  const scale = Math.min(largestScale, Math.max(smallestScale, view.scale * factor));
  const held = on.toPlan(at);
  return {
    scale,
    centre: {
      x: held.x - (on.flipX * (at.x - on.width / 2)) / scale,
      y: held.y - (on.flipY * (at.y - on.height / 2)) / scale,
    },
  };
}

/** The view after the paper was dragged by some pixels. */
export function pannedBy(view: View, on: Projection, dx: number, dy: number): View {
  return {
    ...view,
    centre: {
      x: view.centre.x - (on.flipX * dx) / view.scale,
      y: view.centre.y - (on.flipY * dy) / view.scale,
    },
  };
}
