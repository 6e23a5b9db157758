/** A point on the sheet, in its own units: right and down. */
export type Spot = readonly [number, number];

export const ink = "#1c2430";
export const quiet = "#667078";
/** Deep teal: what moves. */
export const moving = "#0b6762";
export const movingFill = "#d9e9e5";
/** Burnt orange: limits, and nothing else. */
const limit = "#b3470f";
const paper = "#faf8f1";

const shown = (value: number): string => String(Math.round(value * 100) / 100);
const pair = ([x, y]: Spot): string => `${shown(x)},${shown(y)}`;

/** Text from a job never becomes markup. */
const escaped = (text: string): string =>
  text.replace(/[&<>"']/g, (character) => `&#${character.charCodeAt(0)};`);

interface Pen {
  readonly colour?: string;
  readonly width?: number;
  readonly fill?: string;
  /** `hidden`: the other position of something that moves; `centre`: axes and centre lines. */
  readonly dash?: "phantom" | "centre";
}

const dashes = { phantom: "13 3.5 2.5 3.5 2.5 3.5", centre: "16 3.5 3 3.5" };

const strokes = ({ colour = ink, width = 2, fill = "none", dash }: Pen): string =>
  `fill="${fill}" stroke="${colour}" stroke-width="${width}"${dash ? ` stroke-dasharray="${dashes[dash]}"` : ""}`;

export const polygon = (corners: readonly Spot[], pen: Pen = {}): string =>
  `<polygon points="${corners.map(pair).join(" ")}" ${strokes(pen)}/>`;

export const line = (spots: readonly Spot[], pen: Pen = {}): string =>
  `<polyline points="${spots.map(pair).join(" ")}" ${strokes(pen)}/>`;

export const circle = ([x, y]: Spot, radius: number, pen: Pen = {}): string =>
  `<circle cx="${shown(x)}" cy="${shown(y)}" r="${shown(radius)}" ${strokes(pen)}/>`;

/** An arc about `centre` as a polyline, from one angle to another on the sheet [rad]. */
function arc(centre: Spot, radius: number, from: number, to: number, pen: Pen = {}): string {
  const count = 48;
  const spots = Array.from({ length: count + 1 }, (_, i): Spot => {
    const at = from + ((to - from) * i) / count;
    return [centre[0] + radius * Math.cos(at), centre[1] + radius * Math.sin(at)];
  });
  return line(spots, pen);
}

interface Lettering {
  readonly size?: number;
  readonly colour?: string;
  readonly anchor?: "start" | "middle" | "end";
  readonly bold?: boolean;
  /** Turned about its own place, clockwise on the sheet [deg]. */
  readonly turn?: number;
}

/** Letters with a rim of paper, so that a line behind them does not strike them through. */
export function letters(text: string, [x, y]: Spot, look: Lettering = {}): string {
  const { size = 17, colour = ink, anchor = "start", bold = false, turn = 0 } = look;
  const place = `x="${shown(x)}" y="${shown(y)}"`;
  const turned = turn === 0 ? "" : ` transform="rotate(${shown(turn)} ${shown(x)} ${shown(y)})"`;
  return (
    `<text ${place} font-size="${size}" fill="${colour}" text-anchor="${anchor}"` +
    `${bold ? ' font-weight="600"' : ""} stroke="${paper}" stroke-width="5" paint-order="stroke"` +
    `${turned}>${escaped(text)}</text>`
  );
}

/** A slim filled arrow with its point at `tip`, coming from `from`. */
function arrow(tip: Spot, from: Spot, colour: string): string {
  const [dx, dy] = [tip[0] - from[0], tip[1] - from[1]];
  const length = Math.hypot(dx, dy);
  const [ux, uy] = [dx / length, dy / length];
  const back: Spot = [tip[0] - 13 * ux, tip[1] - 13 * uy];
  const side = 2.6;
  return polygon(
    [tip, [back[0] - side * uy, back[1] + side * ux], [back[0] + side * uy, back[1] - side * ux]],
    {
      colour,
      width: 0.5,
      fill: colour,
    },
  );
}

interface Dimension {
  readonly from: Spot;
  readonly to: Spot;
  /** Where the dimension line runs: its x when vertical, its y when horizontal. */
  readonly at: number;
  readonly text: string;
}

/** An extension line begins a little off what it extends and ends a little past the dimension line. */
function extension(from: Spot, to: Spot): string {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
  if (length < 8) return "";
  const [ux, uy] = [(to[0] - from[0]) / length, (to[1] - from[1]) / length];
  const spots: Spot[] = [
    [from[0] + 6 * ux, from[1] + 6 * uy],
    [to[0] + 6 * ux, to[1] + 6 * uy],
  ];
  return line(spots, { width: 0.9 });
}

/** A horizontal dimension, its text above the line. */
export function across({ from, to, at, text }: Dimension): string {
  const [a, b]: [Spot, Spot] = [
    [from[0], at],
    [to[0], at],
  ];
  return [
    extension(from, a),
    extension(to, b),
    line([a, b], { width: 0.9 }),
    arrow(a, b, ink),
    arrow(b, a, ink),
    letters(text, [(a[0] + b[0]) / 2, at - 7], { anchor: "middle" }),
  ].join("");
}

/** A vertical dimension, its text along the line and read from the right. */
export function upright({ from, to, at, text }: Dimension): string {
  const [a, b]: [Spot, Spot] = [
    [at, from[1]],
    [at, to[1]],
  ];
  return [
    extension(from, a),
    extension(to, b),
    line([a, b], { width: 0.9 }),
    arrow(a, b, ink),
    arrow(b, a, ink),
    letters(text, [at - 7, (a[1] + b[1]) / 2], { anchor: "middle", turn: -90 }),
  ].join("");
}

/** The angle between two directions on the sheet [rad], its text in the middle of the arc. */
export function angle(centre: Spot, radius: number, from: number, to: number, text: string): string {
  const at = (direction: number, r = radius): Spot => [
    centre[0] + r * Math.cos(direction),
    centre[1] + r * Math.sin(direction),
  ];
  // An arrow lies on the chord of its own length, so that it follows the arc.
  const back = (13 / radius) * Math.sign(to - from);
  const middle = at((from + to) / 2);
  return [
    arc(centre, radius, from, to, { width: 0.9 }),
    arrow(at(from), at(from + back), ink),
    arrow(at(to), at(to - back), ink),
    letters(text, [middle[0], middle[1] + 6], { anchor: "middle" }),
  ].join("");
}

/** A bar of a stated length with its ends marked. */
export function scaleBar([x, y]: Spot, length: number, text: string): string {
  const ends = [0, length / 2, length].map((along) =>
    line([[x + along, y - 5] as Spot, [x + along, y + 5] as Spot], { width: 1 }),
  );
  const bar = line([[x, y] as Spot, [x + length, y] as Spot], { width: 1 });
  return [bar, ...ends, letters(text, [x + length + 12, y + 6], { size: 15 })].join("");
}

/** A gap with its arrows outside pointing in, its text beyond `to`. */
export function gapMark(from: Spot, to: Spot, text: readonly string[]): string {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
  const [ux, uy] = [(to[0] - from[0]) / length, (to[1] - from[1]) / length];
  const beyond = (spot: Spot, by: number): Spot => [spot[0] + by * ux, spot[1] + by * uy];
  const [before, after] = [beyond(from, -30), beyond(to, 42)];
  return [
    line([before, after], { colour: limit, width: 1.1 }),
    arrow(from, before, limit),
    arrow(to, after, limit),
    ...text.map((part, i) => letters(part, [after[0] + 8, after[1] + 6 + 20 * i], { colour: limit })),
  ].join("");
}

/** Slanted hatching inside an outline: what stands still. */
export function hatched(id: string, corners: readonly Spot[], spacing: number): string {
  const [xs, ys] = [corners.map(([x]) => x), corners.map(([, y]) => y)];
  const [left, right, top, bottom] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  const height = bottom - top;
  const strips: string[] = [];
  for (let x = left - height; x < right; x += spacing) {
    strips.push(
      line(
        [
          [x, bottom],
          [x + height, top],
        ],
        { width: 0.8, colour: quiet },
      ),
    );
  }
  const clip = `<clipPath id="${id}"><polygon points="${corners.map(pair).join(" ")}"/></clipPath>`;
  return `${clip}<g clip-path="url(#${id})">${strips.join("")}</g>${polygon(corners)}`;
}

/** The sheet: paper, a border, and what is drawn on it. `title` is read out by screen readers. */
export function sheet([width, height]: Spot, title: string, drawn: readonly string[]): string {
  const border = polygon(
    [
      [16, 16],
      [width - 16, 16],
      [width - 16, height - 16],
      [16, height - 16],
    ],
    { width: 1.2 },
  );
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}" role="img" aria-labelledby="title"`,
    `  font-family="Inter, 'Source Sans 3', 'Segoe UI', 'DejaVu Sans', Helvetica, Arial, sans-serif" stroke-linejoin="round">`,
    `<title id="title">${escaped(title)}</title>`,
    `<rect width="${width}" height="${height}" fill="${paper}"/>`,
    border,
    ...drawn,
    "</svg>",
    "",
  ].join("\n");
}
