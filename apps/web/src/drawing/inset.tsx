import type { Bench } from "../stages/placement/bench.ts";
import { text } from "../strings/text.ts";
import { LeafDrawing, OtherLeaves, RamDrawing } from "./gate-drawing.tsx";
import { ramShape } from "./gate-shapes.ts";
import { projection, viewOf } from "./projection.ts";
import { StandingThings } from "./standing.tsx";
import { wholeGate } from "./views.ts";

const paper = { width: 200, height: 170 };

/** The whole gate in the corner of the sheet; pressing it shows the whole gate on the sheet. */
export function Inset(props: {
  readonly bench: Bench;
  readonly fromOtherSide: boolean;
  readonly press: () => void;
}) {
  const { bench } = props;
  const { leaf, ram, theta } = bench;
  const on = projection(viewOf(wholeGate(bench), paper, 12), paper, leaf.hingeSide, props.fromOtherSide);
  return (
    <button type="button" className="inset" onClick={props.press}>
      <span>{text("sheet.whole")}</span>
      <svg
        width={paper.width}
        height={paper.height}
        viewBox={`0 0 ${paper.width} ${paper.height}`}
        aria-hidden="true"
      >
        <StandingThings leaf={leaf} on={on} />
        <OtherLeaves bench={bench} on={on} />
        <LeafDrawing bench={bench} on={on} />
        {leaf.placement !== undefined && (
          <RamDrawing shape={ramShape(leaf, ram, leaf.placement, theta)} on={on} />
        )}
      </svg>
    </button>
  );
}
