// What the papers use of pdfkit 0.20, whose package brings no types of its own.
declare module "pdfkit" {
  export interface PdfOptions {
    readonly autoFirstPage?: boolean;
    readonly compress?: boolean;
    readonly displayTitle?: boolean;
    /** Null, so that no standard font is asked for; a font given here would be parsed anew at every use by name. */
    readonly font: null;
    readonly info?: Readonly<Record<string, unknown>>;
    readonly lang?: string;
    readonly pdfVersion?: "1.7";
    readonly tagged?: boolean;
  }

  export interface PdfTextOptions {
    readonly lineBreak?: boolean;
    readonly baseline?: "alphabetic";
  }

  export interface PdfStructure {
    add(child: PdfStructure): this;
    end(): void;
  }

  export class PDFDocument {
    constructor(options: PdfOptions);
    readonly _root: { readonly data: { ViewerPreferences?: { readonly data: Record<string, unknown> } } };
    addPage(options: { readonly size: readonly [number, number]; readonly margin: number }): this;
    registerFont(name: string, source: Uint8Array): this;
    font(name: string): this;
    fontSize(size: number): this;
    widthOfString(text: string): number;
    text(text: string, x: number, y: number, options: PdfTextOptions): this;
    struct(kind: string, content: (() => void) | { readonly title: string }): PdfStructure;
    addStructure(structure: PdfStructure): this;
    markContent(kind: string, options?: Readonly<Record<string, unknown>>): this;
    endMarkedContent(): this;
    save(): this;
    restore(): this;
    scale(factor: number): this;
    translate(x: number, y: number): this;
    rotate(degrees: number): this;
    moveTo(x: number, y: number): this;
    lineTo(x: number, y: number): this;
    bezierCurveTo(ax: number, ay: number, bx: number, by: number, x: number, y: number): this;
    closePath(): this;
    circle(x: number, y: number, radius: number): this;
    rect(x: number, y: number, width: number, height: number): this;
    clip(): this;
    lineWidth(width: number): this;
    lineJoin(join: "round" | "miter"): this;
    dash(lengths: readonly number[], options: Readonly<Record<string, never>>): this;
    undash(): this;
    strokeColor(ink: string): this;
    fillColor(ink: string): this;
    stroke(): this;
    fill(): this;
    fillAndStroke(): this;
    on(event: "data", listener: (chunk: Uint8Array) => void): this;
    on(event: "end", listener: () => void): this;
    on(event: "error", listener: (error: unknown) => void): this;
    end(): this;
  }
}
