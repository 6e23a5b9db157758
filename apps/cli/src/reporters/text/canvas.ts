/** A point on the plan, fixed frame [mm]. */
export type PlanPoint = readonly [x: number, y: number];

/** What part of the plan is shown, and how coarsely. */
export interface View {
  readonly fromX: number;
  readonly toX: number;
  readonly fromY: number;
  readonly toY: number;
  /** One column [mm]; a row is twice that, since a character is about twice as high as wide. */
  readonly columnMm: number;
  /** Draws +x to the left instead of to the right. */
  readonly mirrored: boolean;
}

/** A drawing made of characters: +x to the right (or left, when mirrored), +y down the page. */
export interface Canvas {
  fill(outline: readonly PlanPoint[], mark: string): void;
  line(from: PlanPoint, to: PlanPoint, mark: string): void;
  put(point: PlanPoint, mark: string): void;
  /** The drawing without the empty rows above and below it. */
  rows(): string[];
}

export function createCanvas(view: View): Canvas {
  const rowMm = 2 * view.columnMm;
  const columns = Math.ceil((view.toX - view.fromX) / view.columnMm);
  const height = Math.ceil((view.toY - view.fromY) / rowMm);
  const cells = Array.from({ length: height }, () => new Array<string>(columns).fill(" "));

  const put = ([x, y]: PlanPoint, mark: string) => {
    const column = Math.floor((view.mirrored ? view.toX - x : x - view.fromX) / view.columnMm);
    const row = cells[Math.floor((y - view.fromY) / rowMm)];
    if (row !== undefined && column >= 0 && column < columns) row[column] = mark;
  };

  const line = ([x0, y0]: PlanPoint, [x1, y1]: PlanPoint, mark: string) => {
    const steps = Math.max(1, Math.ceil((2 * Math.hypot(x1 - x0, y1 - y0)) / view.columnMm));
    for (let step = 0; step <= steps; step += 1) {
      put([x0 + ((x1 - x0) * step) / steps, y0 + ((y1 - y0) * step) / steps], mark);
    }
  };

  const fill = (outline: readonly PlanPoint[], mark: string) => {
    for (let row = 0; row < height; row += 1) {
      const y = view.fromY + (row + 0.5) * rowMm;
      for (let column = 0; column < columns; column += 1) {
        const fromEdge = (column + 0.5) * view.columnMm;
        const x = view.mirrored ? view.toX - fromEdge : view.fromX + fromEdge;
        if (isInside(outline, x, y)) put([x, y], mark);
      }
    }
    // Something thinner than a row holds no cell's middle; its edges still show.
    for (const [index, corner] of outline.entries()) {
      line(corner, outline[(index + 1) % outline.length] ?? corner, mark);
    }
  };

  const rows = () => {
    const lines = cells.map((row) => row.join("").trimEnd());
    const isDrawn = (text: string) => text !== "";
    return lines.slice(lines.findIndex(isDrawn), lines.findLastIndex(isDrawn) + 1);
  };

  return { put, line, fill, rows };
}

/** Even–odd rule: a ray to the right crosses the outline an odd number of times. */
function isInside(outline: readonly PlanPoint[], x: number, y: number): boolean {
  let inside = false;
  for (const [index, [ax, ay]] of outline.entries()) {
    const [bx, by] = outline[(index + 1) % outline.length] ?? [ax, ay];
    if (ay > y !== by > y && x < ax + ((bx - ax) * (y - ay)) / (by - ay)) inside = !inside;
  }
  return inside;
}
