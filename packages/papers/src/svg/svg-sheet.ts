import type { Drawn, DrawnArc, DrawnText, FlatFill } from "../scene/drawn.ts";
import { withoutControls } from "../scene/one-line.ts";
import { roleStyles } from "../scene/role-style.ts";
import type { Role, Spot } from "../scene/scene.ts";
import { escapedText } from "./escaped-text.ts";

/** A drawing on paper to be written as SVG. */
export interface SvgSheet {
  /** Paper size [mm]. */
  readonly width: number;
  readonly height: number;
  readonly title: string;
  readonly items: readonly Drawn[];
}

/**
 * A drawing as an SVG document whose user unit is one millimetre of paper, so that it prints true.
 *
 * Text from a job never becomes markup: it is escaped, and control characters are left out. Fonts are named, not
 * embedded; where IBM Plex Sans is missing another sans serif stands in.
 *
 * ### Example
 *   const svg = svgSheet({ width: 210, height: 297, title: "A & B", items: [] });
 *   expect(svg).toContain('width="210mm" height="297mm" viewBox="0 0 210 297"');
 *   expect(svg).toContain("<title>A &amp; B</title>");
 */
export function svgSheet({ width, height, title, items }: SvgSheet): string {
  const clips = new Clips();
  const body = items.map((item) => element(item, clips)).join("\n");
  return [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<svg xmlns="http://www.w3.org/2000/svg" width="${number(width)}mm" height="${number(height)}mm" viewBox="0 0 ${number(width)} ${number(height)}" font-family="'IBM Plex Sans', 'Noto Sans', sans-serif">`,
    `<title>${escapedText(withoutControls(title))}</title>`,
    `<rect width="${number(width)}" height="${number(height)}" fill="#ffffff"/>`,
    ...(clips.text === "" ? [] : [`<defs>${clips.text}</defs>`]),
    body,
    "</svg>",
    "",
  ].join("\n");
}

class Clips {
  text = "";
  #count = 0;
  add(left: number, top: number, width: number, height: number): string {
    this.#count += 1;
    const id = `clip${this.#count}`;
    this.text += `<clipPath id="${id}"><rect x="${number(left)}" y="${number(top)}" width="${number(width)}" height="${number(height)}"/></clipPath>`;
    return id;
  }
}

function element(item: Drawn, clips: Clips): string {
  switch (item.kind) {
    case "path": {
      const d = `M${item.spots.map(pair).join("L")}${item.closed ? "Z" : ""}`;
      return `<path d="${d}" ${paint(item.role, item.fill, item.stroked)}/>`;
    }
    case "strokes": {
      const d = item.strokes.map(([from, to]) => `M${pair(from)}L${pair(to)}`).join("");
      return d === "" ? "" : `<path d="${d}" ${paint(item.role, "none", true)}/>`;
    }
    case "circle":
      return `<circle cx="${number(item.centre.x)}" cy="${number(item.centre.y)}" r="${number(item.radius)}" ${paint(item.role, item.fill, true)}/>`;
    case "arc":
      return `<path d="${arcPath(item)}" ${paint(item.role, "none", true)}/>`;
    case "text":
      return textElement(item);
    case "clip": {
      const id = clips.add(item.left, item.top, item.right - item.left, item.bottom - item.top);
      const inside = item.items.map((one) => element(one, clips)).join("\n");
      return `<g clip-path="url(#${id})">\n${inside}\n</g>`;
    }
  }
}

function textElement({ at, text, size, anchor, turn, bold, role }: DrawnText): string {
  const place =
    Math.abs(turn) < 1e-9
      ? `x="${number(at.x)}" y="${number(at.y)}"`
      : `transform="translate(${number(at.x)} ${number(at.y)}) rotate(${number((turn * 180) / Math.PI)})"`;
  const anchored = anchor === "start" ? "" : ` text-anchor="${anchor}"`;
  const weight = bold ? ' font-weight="600"' : "";
  return `<text ${place} font-size="${number(size)}" fill="${roleStyles[role].ink}"${anchored}${weight}>${escapedText(withoutControls(text))}</text>`;
}

function arcPath({ centre, radius, fromAngle, toAngle }: DrawnArc): string {
  const on = (angle: number): Spot => ({
    x: centre.x + radius * Math.cos(angle),
    y: centre.y + radius * Math.sin(angle),
  });
  const by = toAngle - fromAngle;
  const large = Math.abs(by) > Math.PI ? 1 : 0;
  return `M${pair(on(fromAngle))}A${number(radius)} ${number(radius)} 0 ${large} ${by > 0 ? 1 : 0} ${pair(on(toAngle))}`;
}

function paint(role: Role, fill: FlatFill, stroked: boolean): string {
  const style = roleStyles[role];
  const inks = { none: "none", paper: "#ffffff", tint: style.tint, solid: style.ink };
  if (!stroked) return `fill="${inks[fill]}"`;
  const dashes = style.dashes.length === 0 ? "" : ` stroke-dasharray="${style.dashes.join(" ")}"`;
  return `fill="${inks[fill]}" stroke="${style.ink}" stroke-width="${number(style.width)}" stroke-linejoin="round"${dashes}`;
}

const pair = ({ x, y }: Spot): string => `${number(x)} ${number(y)}`;

/** To a tenth of a micrometre, without closing zeros. */
const number = (value: number): string => String(Math.round(value * 1e4) / 1e4 + 0);
