/// <reference path="./pdfkit.d.ts" />
import type { PDFDocument, PdfStructure } from "pdfkit";
import type { Drawn, DrawnArc, DrawnText, FlatFill } from "../scene/drawn.ts";
import { withoutControls } from "../scene/one-line.ts";
import { roleStyles } from "../scene/role-style.ts";
import type { Role, Spot } from "../scene/scene.ts";

/** Puts drawn things on the current page of a PDF, in millimetres: strokes as artifacts, texts as tagged content. */
export class PdfPen {
  readonly #document: PDFDocument;
  readonly #section: PdfStructure;

  constructor(document: PDFDocument, section: PdfStructure) {
    this.#document = document;
    this.#section = section;
  }

  draw(items: readonly Drawn[]): void {
    for (const item of items) {
      if (item.kind === "text") this.#text(item);
      else if (item.kind === "clip") {
        this.#document.save();
        this.#document.rect(item.left, item.top, item.right - item.left, item.bottom - item.top).clip();
        this.draw(item.items);
        this.#document.restore();
      } else {
        this.#document.markContent("Artifact", { type: "Layout" });
        this.#stroke(item);
        this.#document.endMarkedContent();
      }
    }
  }

  #stroke(item: Exclude<Drawn, { kind: "text" | "clip" }>): void {
    const document = this.#document;
    switch (item.kind) {
      case "path": {
        trace(document, item.spots);
        if (item.closed) document.closePath();
        this.#paint(item.role, item.fill, item.stroked);
        return;
      }
      case "strokes": {
        if (item.strokes.length === 0) return;
        for (const stroke of item.strokes) trace(document, stroke);
        this.#paint(item.role, "none", true);
        return;
      }
      case "circle": {
        document.circle(item.centre.x, item.centre.y, item.radius);
        this.#paint(item.role, item.fill, true);
        return;
      }
      case "arc": {
        traceArc(document, item);
        this.#paint(item.role, "none", true);
      }
    }
  }

  #paint(role: Role, fill: FlatFill, stroked: boolean): void {
    const style = roleStyles[role];
    const document = this.#document;
    if (stroked) {
      document.lineWidth(style.width).lineJoin("round").strokeColor(style.ink);
      if (style.dashes.length > 0) document.dash(style.dashes, {});
      else document.undash();
    }
    if (fill !== "none") document.fillColor({ paper: "#ffffff", tint: style.tint, solid: style.ink }[fill]);
    if (stroked && fill !== "none") document.fillAndStroke();
    else if (stroked) document.stroke();
    else if (fill !== "none") document.fill();
  }

  #text({ at, text, size, anchor, turn, bold, role }: DrawnText): void {
    const shown = withoutControls(text);
    if (shown === "") return;
    const document = this.#document;
    const write = () => {
      document.save();
      document
        .font(bold ? "bold" : "regular")
        .fontSize(size)
        .fillColor(roleStyles[role].ink);
      const width = document.widthOfString(shown);
      const left = anchor === "start" ? 0 : anchor === "middle" ? -width / 2 : -width;
      document.translate(at.x, at.y).rotate((turn * 180) / Math.PI);
      document.text(shown, left, 0, { lineBreak: false, baseline: "alphabetic" });
      document.restore();
    };
    this.#section.add(document.struct("P", write));
  }
}

function trace(document: PDFDocument, spots: readonly Spot[]): void {
  spots.forEach(({ x, y }, index) => {
    if (index === 0) document.moveTo(x, y);
    else document.lineTo(x, y);
  });
}

/** Bézier curves of at most an eighth of a turn: off the true arc by less than 1e-6 of its radius. */
function traceArc(document: PDFDocument, { centre, radius, fromAngle, toAngle }: DrawnArc): void {
  const pieces = Math.max(1, Math.ceil(Math.abs(toAngle - fromAngle) / (Math.PI / 4)));
  const by = (toAngle - fromAngle) / pieces;
  const reach = (4 / 3) * Math.tan(by / 4) * radius;
  const on = (angle: number): Spot => ({
    x: centre.x + radius * Math.cos(angle),
    y: centre.y + radius * Math.sin(angle),
  });
  const start = on(fromAngle);
  document.moveTo(start.x, start.y);
  for (let piece = 0; piece < pieces; piece++) {
    const a = fromAngle + piece * by;
    const b = a + by;
    const from = on(a);
    const to = on(b);
    document.bezierCurveTo(
      from.x - reach * Math.sin(a),
      from.y + reach * Math.cos(a),
      to.x + reach * Math.sin(b),
      to.y - reach * Math.cos(b),
      to.x,
      to.y,
    );
  }
}
