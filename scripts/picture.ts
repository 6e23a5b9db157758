// Draws docs/picture.svg from the demo job: `npx tsx scripts/picture.ts`. A test keeps the file in step.
import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { limitsOf, pinToPin, reserveOf } from "../packages/core/src/index.ts";
import {
  assumedValues,
  formatQuantity,
  type Job,
  type JobLeaf,
  type JobPlacement,
  type JobRam,
  ramFor,
  readJob,
  reserveText,
  toPlacement,
  toSituation,
  toTravel,
} from "../packages/job/src/index.ts";
import {
  across,
  angle,
  circle,
  gapMark,
  hatched,
  ink,
  letters,
  line,
  moving,
  movingFill,
  polygon,
  quiet,
  type Spot,
  scaleBar,
  sheet,
  upright,
} from "./picture-marks.ts";
import { root } from "./places.mjs";

/** A point in the job's plan frame (rule G1) [mm]. */
type PlanPoint = readonly [number, number];
type ToSheet = (point: PlanPoint) => Spot;

const size: Spot = [1220, 1050];

/**
 * The plan on the sheet, seen from above with the ram's side toward the reader (down the sheet), so that a
 * hinge on the left as seen from the ram's side is on the left of the sheet; see docs/conventions.md.
 */
function toSheet(hinge: Spot, scale: number, hingeSide: JobLeaf["hingeSide"]): ToSheet {
  const sign = hingeSide === "left" ? 1 : -1;
  return ([along, out]) => [hinge[0] + sign * along * scale, hinge[1] + out * scale];
}

const turned = ([along, off]: PlanPoint, turn: number): PlanPoint => [
  along * Math.cos(turn) - off * Math.sin(turn),
  along * Math.sin(turn) + off * Math.cos(turn),
];

const box = (a: PlanPoint, b: PlanPoint): PlanPoint[] => [a, [b[0], a[1]], b, [a[0], b[1]]];

interface Drawn {
  readonly to: ToSheet;
  readonly leaf: JobLeaf;
  readonly ram: JobRam;
  readonly placement: JobPlacement;
}

const openTurn = ({ swing, openAngleDeg }: JobLeaf): number =>
  ((swing === "toward" ? 1 : -1) * openAngleDeg * Math.PI) / 180;

/** The leaf cut off at `cut` along it, with a break line there. */
function cutLeaf({ to, leaf }: Drawn, turn: number, cut: number, pen: Parameters<typeof line>[1]): string {
  const [front, back] = [leaf.faceMm, leaf.faceMm - leaf.thicknessMm];
  const at = (along: number, off: number) => to(turned([along, off], turn));
  const middle = (front + back) / 2;
  const zigzag: PlanPoint[] = [
    [cut, front + 22],
    [cut, middle + 9],
    [cut + 16, middle + 4],
    [cut - 16, middle - 4],
    [cut, middle - 9],
    [cut, back - 22],
  ];
  const body = [at(cut, front), at(leaf.heelMm, front), at(leaf.heelMm, back), at(cut, back)];
  return [
    line(body, pen),
    line(
      zigzag.map(([along, off]) => at(along, off)),
      { width: 0.9 },
    ),
    ...(leaf.boxes ?? []).map(({ alongMm, offMm }) =>
      polygon(
        box([alongMm[0], offMm[0]], [alongMm[1], offMm[1]]).map((corner) => to(turned(corner, turn))),
        { ...pen, width: 1 },
      ),
    ),
  ].join("");
}

const postPinOf = ({ placement }: Drawn): PlanPoint => [placement.postPin.alongMm, placement.postPin.outMm];
const leafPinOf = ({ placement }: Drawn, turn: number): PlanPoint =>
  turned([placement.leafPin.alongMm, placement.leafPin.offMm], turn);

function ramAt(drawn: Drawn, turn: number, pen: Parameters<typeof polygon>[1]): string {
  const { to, ram } = drawn;
  const [px, py] = postPinOf(drawn);
  const [gx, gy] = leafPinOf(drawn, turn);
  const direction = Math.atan2(gy - py, gx - px);
  const at = (station: number, lateral: number): Spot => {
    const [x, y] = turned([station, lateral], direction);
    return to([px + x, py + y]);
  };
  const length = Math.hypot(gx - px, gy - py);
  const tubeEnd = Math.max(...ram.tube.map(({ toMm }) => toMm));
  const tail = Math.min(...ram.tube.map(({ fromMm }) => fromMm));
  const rect = (from: number, end: number, half: number) => [
    at(from, -half),
    at(end, -half),
    at(end, half),
    at(from, half),
  ];
  return [
    polygon(rect(tubeEnd, length, ram.rodHalfWidthMm), pen),
    ...ram.tube.map(({ fromMm, toMm, halfWidthMm }) => polygon(rect(fromMm, toMm, halfWidthMm), pen)),
    line([at(tail - 40, 0), at(length + 45, 0)], { colour: moving, width: 0.8, dash: "centre" }),
  ].join("");
}

/** A pin or the hinge axis: a circle with a small cross. */
function centreMark(spot: Spot, colour: string): string {
  const [x, y] = spot;
  return [
    circle(spot, 6.5, { colour, width: 2, fill: "#ffffff" }),
    line(
      [
        [x - 12, y],
        [x + 12, y],
      ],
      { colour, width: 0.9 },
    ),
    line(
      [
        [x, y - 12],
        [x, y + 12],
      ],
      { colour, width: 0.9 },
    ),
  ].join("");
}

/** Brackets only carry the pins: a foot on the face, tapering to the pin. */
function bracket(
  foot: PlanPoint,
  pin: PlanPoint,
  to: ToSheet,
  turn: number,
  pen: Parameters<typeof polygon>[1] = { width: 1, fill: "#ffffff" },
): string {
  const corners: PlanPoint[] = [
    [foot[0] - 45, foot[1]],
    [foot[0] + 45, foot[1]],
    [pin[0] + 16, pin[1]],
    [pin[0] - 16, pin[1]],
  ];
  return polygon(
    corners.map((corner) => to(turned(corner, turn))),
    pen,
  );
}

/** The least gap of ram and leaf at the end of the travel, measured square off the leaf's face. */
function leafGap(drawn: Drawn): string {
  const { leaf, ram, placement, to } = drawn;
  const pins = toPlacement(placement);
  const least = pins && limitsOf(toSituation(leaf, ram), pins).find(({ id }) => id === "clearance.leaf");
  if (!least || least.value === null || least.limit === null || least.where === null) return "";
  const turn = Math.sign(openTurn(leaf)) * (least.atAngle ?? 0);
  const near: PlanPoint = [least.where.x * 1000, least.where.y * 1000];
  const [along, off] = turned(near, -turn);
  const face = turned([along, off - least.value * 1000], turn);
  const mm = (metres: number) => formatQuantity(metres, "mm");
  return gapMark(to(near), to(face), [`least ${mm(least.value)}`, `${mm(least.limit)} needed`]);
}

function pinToPinMm({ leaf, placement }: Drawn, theta: number): string {
  const pins = toPlacement(placement);
  return pins === null ? "" : String(Math.round(pinToPin(pins, toTravel(leaf), theta) * 1000));
}

function mainView(drawn: Drawn): string[] {
  const { to, leaf, placement } = drawn;
  const turn = openTurn(leaf);
  const hinge = to([0, 0]);
  const [postPin, pinClosed, pinOpen] = [postPinOf(drawn), leafPinOf(drawn, 0), leafPinOf(drawn, turn)];
  const { alongMm, offMm } = placement.leafPin;
  const whole = (mm: number) => String(Math.round(mm));
  const other = { colour: moving, width: 1.1, dash: "phantom" } as const;
  const first = { colour: moving, width: 2, fill: movingFill };
  const radius = hinge[1] - to([0, -660])[1];
  return [
    ...(leaf.fixed ?? []).map(({ outlineMm }, i) => hatched(`fixed-${i}`, outlineMm.map(to), 11)),
    line([to([-610, 0]), to([1440, 0])], { width: 0.9, dash: "centre" }),
    cutLeaf(drawn, turn, 1290, other),
    bracket([alongMm, leaf.faceMm], [alongMm, offMm], to, turn, other),
    ramAt(drawn, turn, other),
    cutLeaf(drawn, 0, 1340, first),
    angle(hinge, radius, 0, turn, `${leaf.openAngleDeg}°`),
    bracket([postPin[0], leaf.post?.ramFaceOutMm ?? 0], postPin, to, 0),
    bracket([alongMm, leaf.faceMm], [alongMm, offMm], to, 0),
    ramAt(drawn, 0, first),
    across({ from: to(postPin), to: hinge, at: to([0, -425])[1], text: whole(-placement.postPin.alongMm) }),
    across({ from: hinge, to: to(pinClosed), at: to([0, -150])[1], text: whole(alongMm) }),
    upright({
      from: to([-590, 0]),
      to: to(postPin),
      at: to([-590, 0])[0],
      text: whole(placement.postPin.outMm),
    }),
    upright({ from: to([1400, 0]), to: to(pinClosed), at: to([1400, 0])[0], text: whole(offMm) }),
    leafGap(drawn),
    centreMark(hinge, ink),
    centreMark(to(postPin), moving),
    centreMark(to(pinClosed), moving),
    centreMark(to(pinOpen), moving),
    letters("hinge axis", to([28, -62])),
    letters("pier", to([-480, -320]), { size: 17 }),
    letters("post pin", to([-255, 262]), { anchor: "end", colour: moving }),
    letters("leaf pin", to([alongMm, 245]), { anchor: "middle", colour: moving }),
    letters("leaf closed", to([1090, -45]), { anchor: "end", colour: moving }),
    letters("leaf open", to([60, 1225]), { colour: moving }),
    letters(`ram ${pinToPinMm(drawn, 0)} pin to pin`, to([110, 300]), { colour: moving }),
    letters(`ram ${pinToPinMm(drawn, Math.abs(turn))} pin to pin`, to([-255, 760]), {
      anchor: "middle",
      colour: moving,
      turn: -90 + leaf.openAngleDeg - 90,
    }),
    scaleBar(to([-590, 1350]), to([500, 0])[0] - to([0, 0])[0], "500 mm"),
  ];
}

/** Both leaves, closed and open, small. */
function wholeGate(job: Job, [left, top]: Spot, scale: number): string[] {
  const between = job.gateway?.betweenHingesMm ?? 0;
  const hinges = { left: [left, top] as Spot, right: [left + between * scale, top] as Spot };
  const leaves = job.leaves.flatMap((leaf, i) => {
    const to = toSheet(hinges[leaf.hingeSide], scale, leaf.hingeSide);
    const turn = openTurn(leaf);
    const outline = (at: number) =>
      box([leaf.heelMm, leaf.faceMm - leaf.thicknessMm], [leaf.lengthMm, leaf.faceMm]).map((corner) =>
        to(turned(corner, at)),
      );
    const sweep = Array.from({ length: 25 }, (_, k) => to(turned([leaf.lengthMm, 0], (turn * k) / 24)));
    return [
      ...(leaf.fixed ?? []).map(({ outlineMm }, k) => hatched(`whole-${i}-${k}`, outlineMm.map(to), 6)),
      line(sweep, { colour: moving, width: 0.8, dash: "centre" }),
      polygon(outline(turn), { colour: moving, width: 0.9, dash: "phantom" }),
      polygon(outline(0), { colour: moving, width: 1.4, fill: movingFill }),
    ];
  });
  const dimension = across({
    from: hinges.left,
    to: hinges.right,
    at: top - 52,
    text: String(between),
  });
  const middle = (hinges.left[0] + hinges.right[0]) / 2;
  const name = letters("the whole gate", [middle, top - 84], {
    size: 15,
    colour: quiet,
    anchor: "middle",
  });
  return [...leaves, dimension, name];
}

function titleBlock(job: Job, { leaf, ram, placement }: Drawn, [x, y]: Spot): string[] {
  const pins = toPlacement(placement);
  if (pins === null) throw new Error("the demo job's placement was expected");
  const reserve = reserveOf(toSituation(leaf, ram), pins);
  const display = job.display ?? "metric";
  const [may, first] = reserveText(reserve, display).split("; ");
  const rows: readonly (readonly [string, string])[] = [
    ["job", `${job.title}, ${leaf.id} leaf`],
    ["farm, ram", `invented, and so is the ${ram.name ?? ram.id}`],
    ["plan", `from above, ram's side toward you, hinge on the ${leaf.hingeSide}`],
    ["reserve", may ?? ""],
    ["", first ?? ""],
    ["not checked", "force: the loads are not known yet"],
    ["assumed", `${assumedValues(job).length} values of this job; lengths in mm`],
  ];
  const [width, row] = [584, 27];
  const height = rows.length * row + 12;
  const corner = (dx: number, dy: number): Spot => [x + dx, y + dy];
  return [
    polygon([corner(0, 0), corner(width, 0), corner(width, height), corner(0, height)], { width: 1.4 }),
    line([corner(112, 0), corner(112, height)], { width: 0.8 }),
    ...rows.flatMap(([name, value], i) => [
      letters(name, corner(10, row * i + 25), { size: 15, colour: quiet }),
      letters(value, corner(122, row * i + 25), { size: 15, bold: i === 3 }),
    ]),
  ];
}

/** The picture of a job's first leaf with a placement, as SVG text. */
export function pictureOf(job: Job): string {
  const leaf = job.leaves[0];
  const ram = leaf && ramFor(job, leaf);
  const placement = leaf?.placement;
  if (!leaf || !ram || !placement) throw new Error("a first leaf with a ram and a placement was expected");
  if (leaf.hingeSide !== "left")
    throw new Error(`leaf ${leaf.id}: the sheet is laid out for a hinge on the left`);
  const drawn = { to: toSheet([388, 282], 0.52, leaf.hingeSide), leaf, ram, placement };
  const title = `Plan of the ${leaf.id} leaf of ${job.title}, an invented farm: leaf and ram closed and open, pier, pins.`;
  return sheet(size, title, [
    ...mainView(drawn),
    ...wholeGate(job, [778, 520], 0.07),
    ...titleBlock(job, drawn, [604, 812]),
  ]);
}

/** The demo job as the picture shows it. */
export function demoJob(): Job {
  const read = readJob(readFileSync(join(root, "examples", "harrow-farm.json"), "utf8"));
  if (!read.ok) throw new Error("the demo job has faults");
  return read.job;
}

export const pictureFile = join(root, "docs", "picture.svg");

if (process.argv[1]?.endsWith("picture.ts")) writeFileSync(pictureFile, pictureOf(demoJob()));
