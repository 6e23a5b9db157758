import { DxfWriter, LWPolylineFlags, point3d, TextHorizontalAlignment, Units } from "@tarikjabiri/dxf";
import { drawScene } from "../scene/draw-scene.ts";
import type { Drawn, DrawnPath, DrawnText } from "../scene/drawn.ts";
import { roleStyles } from "../scene/role-style.ts";
import type { Role, Scene, Spot } from "../scene/scene.ts";
import { dxfText } from "./dxf-text.ts";

/** Height of capitals over letter size: CAD texts are given by the former. */
const capitals = 0.7;

/** AutoCAD colour index of each ink: 7 is black on white and white on black. */
const colours: Partial<Record<Role, number>> = {
  hatch: 8,
  ghost: 8,
  centreline: 8,
  leader: 8,
  note: 8,
  cut: 8,
  ram: 134,
  sweep: 134,
  curve: 134,
  limit: 30,
};

/**
 * A scene as a DXF drawing in millimetres, full size, x to the right and y up, one layer for each role.
 *
 * Texts, arrows and dashes are sized so that a plot at 1 : `denominator` looks like the sheet. Dimensions are
 * lines and texts. Throws RangeError when the scale is not positive.
 *
 * ### Example
 *   const line = { kind: "line" as const, role: "fixed" as const, from: { x: 0, y: 0 }, to: { x: 1000, y: 250 } };
 *   const dxf = dxfFile({ shapes: [line], extent: { left: 0, top: 0, right: 1000, bottom: 250 } }, 10);
 *   expect(dxf).toContain("\n11\n1000\n21\n-250\n");
 */
export function dxfFile(scene: Scene, denominator: number): string {
  const writer = new DxfWriter();
  writer.setUnits(Units.Millimeters);
  writer.setVariable("$LTSCALE", { 40: denominator });
  const items = flat(drawScene(scene, { denominator, origin: { x: 0, y: 0 } }));
  for (const role of rolesOf(items)) addLayer(writer, role);
  for (const item of items) addItem(writer, item, denominator);
  return writer.stringify();
}

type Flat = Exclude<Drawn, { kind: "clip" }>;

const flat = (items: readonly Drawn[]): Flat[] =>
  items.flatMap((item) => (item.kind === "clip" ? flat(item.items) : [item]));

function rolesOf(items: readonly Flat[]): Role[] {
  return [...new Set(items.map((item) => item.role))];
}

const layerName = (role: Role): string => role.toUpperCase();

function addLayer(writer: DxfWriter, role: Role): void {
  const { dashes } = roleStyles[role];
  let lineType = "Continuous";
  if (dashes.length > 0) {
    lineType = `DASH${dashes.length}_${layerName(role)}`;
    // Gaps are negative in a DXF line type.
    writer.addLType(
      lineType,
      `dashes of ${role}`,
      dashes.map((length, index) => (index % 2 === 0 ? length : -length)),
    );
  }
  writer.addLayer(layerName(role), colours[role] ?? 7, lineType);
}

function addItem(writer: DxfWriter, item: Flat, denominator: number): void {
  const on = ({ x, y }: Spot) => point3d(full(x * denominator), full(-y * denominator));
  const layer = { layerName: layerName(item.role) };
  switch (item.kind) {
    case "path":
      addPath(writer, item, on);
      return;
    case "strokes":
      for (const [from, to] of item.strokes) writer.addLine(on(from), on(to), layer);
      return;
    case "circle":
      writer.addCircle(on(item.centre), full(item.radius * denominator), layer);
      return;
    case "arc": {
      // DXF arcs run counter-clockwise with y up; on the page angles run the other way.
      const ends = [-item.toAngle, -item.fromAngle].map((angle) => full((angle * 180) / Math.PI)) as [
        number,
        number,
      ];
      const [start, end] = item.toAngle > item.fromAngle ? ends : [ends[1], ends[0]];
      writer.addArc(on(item.centre), full(item.radius * denominator), start, end, layer);
      return;
    }
    case "text":
      addText(writer, item, on(item.at), denominator);
  }
}

function addPath(writer: DxfWriter, item: DrawnPath, on: (spot: Spot) => ReturnType<typeof point3d>): void {
  const layer = { layerName: layerName(item.role) };
  const spots = item.spots.map(on);
  const [tip, a, b] = spots;
  if (item.fill === "solid" && spots.length === 3 && tip && a && b) {
    // An arrow head as one stretch that tapers to nothing: CAD programs fill it, and the writer has no solids.
    const foot = { x: full((a.x + b.x) / 2), y: full((a.y + b.y) / 2) };
    const startingWidth = full(Math.hypot(a.x - b.x, a.y - b.y));
    writer.addLWPolyline([{ point: foot, startingWidth, endWidth: 0 }, { point: tip }], layer);
    return;
  }
  if (!item.stroked) return;
  const flags = item.closed ? LWPolylineFlags.Closed : LWPolylineFlags.None;
  writer.addLWPolyline(
    spots.map((point) => ({ point })),
    { ...layer, flags },
  );
}

const alignments = {
  start: TextHorizontalAlignment.Left,
  middle: TextHorizontalAlignment.Center,
  end: TextHorizontalAlignment.Right,
} as const;

function addText(
  writer: DxfWriter,
  item: DrawnText,
  at: ReturnType<typeof point3d>,
  denominator: number,
): void {
  writer.addText(at, full(item.size * capitals * denominator), dxfText(item.text), {
    layerName: layerName(item.role),
    rotation: full((-item.turn * 180) / Math.PI),
    horizontalAlignment: alignments[item.anchor],
    secondAlignmentPoint: at,
  });
}

/** To a nanometre, so that scaling to paper and back leaves no dust. */
const full = (value: number): number => Math.round(value * 1e6) / 1e6 + 0;
