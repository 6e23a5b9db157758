export { dxfFile } from "./dxf/dxf-file.ts";
export { dxfText } from "./dxf/dxf-text.ts";
export { fileNamePart } from "./file-name.ts";
export { type PackFile, type PackOfJob, type PackOptions, packOf } from "./pack.ts";
export { type PdfAbout, pdfFile } from "./pdf/pdf-file.ts";
export { type PackFonts, pdfTextMeasure } from "./pdf/pdf-fonts.ts";
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
export { gateScene } from "./scene/gate-scene.ts";
export { hatchStrokes } from "./scene/hatch.ts";
export { movedScene } from "./scene/moved.ts";
export { withoutControls } from "./scene/one-line.ts";
export { type DimensionsOnPlan, dimensionFigure } from "./scene/plan-dimensions.ts";
export { type PlanOptions, planScene } from "./scene/plan-scene.ts";
export { onDrawing, type PlanView, planView, type StandsOn, turnOnDrawing } from "./scene/plan-view.ts";
export { type RoleStyle, roleStyles } from "./scene/role-style.ts";
export {
  type Anchor,
  type ArcShape,
  type Box,
  boxRound,
  type CircleShape,
  type DimensionShape,
  type Fill,
  type LineShape,
  type MarkShape,
  type OutlineShape,
  type Role,
  type Scene,
  type Shape,
  type Spot,
  type TextShape,
} from "./scene/scene.ts";
export { leafTemplate, postTemplate, type TemplateScene } from "./scene/template-scenes.ts";
export { roughTextWidth } from "./scene/text-width.ts";
export { jobMark } from "./sheets/job-mark.ts";
export type { MeasureText, PaperName, Sheet } from "./sheets/sheet.ts";
export { fitText, wrapText } from "./sheets/text-lines.ts";
export { valueInWords } from "./sheets/value-name.ts";
export { escapedText } from "./svg/escaped-text.ts";
export { type SvgSheet, svgSheet } from "./svg/svg-sheet.ts";
export { utf8 } from "./utf8.ts";
