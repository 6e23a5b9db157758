export { centredOrigin, drawScene, type OnPaper, paperSpot } from "./scene/draw-scene.ts";
export type {
  Drawn,
  DrawnArc,
  DrawnCircle,
  DrawnClip,
  DrawnPath,
  DrawnStrokes,
  DrawnText,
  FlatFill,
} from "./scene/drawn.ts";
export { hatchStrokes } from "./scene/hatch.ts";
export { type DimensionsOnPlan, dimensionFigure } from "./scene/plan-dimensions.ts";
export { type PlanOptions, planScene } from "./scene/plan-scene.ts";
export { onDrawing, type PlanView, planView, type StandsOn, turnOnDrawing } from "./scene/plan-view.ts";
export { type RoleStyle, roleStyles } from "./scene/role-style.ts";
export {
  type Anchor,
  type Box,
  boxRound,
  type Fill,
  type Role,
  type Scene,
  type Shape,
  type Spot,
} from "./scene/scene.ts";
export { roughTextWidth } from "./scene/text-width.ts";
