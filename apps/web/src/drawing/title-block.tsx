import { useMemo } from "react";
import type { Bench } from "../stages/placement/bench.ts";
import { leafValues } from "../stages/placement/leaf-values.ts";
import { type Phrase, text } from "../strings/text.ts";

/** CSS counts 96 pixels to the inch; a screen is seldom exact, so the scale is rounded to what it can mean. */
const pixelsPerMm = 96 / 25.4;

/** What the sheet is: view, scale, for which side it is drawn, ram, and how much of it is only assumed. */
export function TitleBlock(props: {
  readonly bench: Bench;
  readonly scale: number;
  readonly fromOtherSide: boolean;
}) {
  const { bench, scale, fromOtherSide } = props;
  const { stored, leaf, leafIndex, ram } = bench;
  const assumed = useMemo(
    () => leafValues(stored, leafIndex, ram).filter((value) => value.standing === "assumed").length,
    [stored, leafIndex, ram],
  );
  const side = `block.hinge${leaf.hingeSide === "left" ? "Left" : "Right"}${fromOtherSide ? "Other" : ""}`;
  const ratio = pixelsPerMm / scale;
  return (
    <dl className="title-block">
      <div>
        <dt>{text("block.plan")}</dt>
        <dd>{text("block.scale", { scale: ratio < 10 ? ratio.toFixed(1) : Math.round(ratio) })}</dd>
      </div>
      <div>
        <dt>{text("block.drawnFor")}</dt>
        <dd>{text(side as Phrase)}</dd>
      </div>
      <div>
        <dt>{text("block.ram")}</dt>
        <dd>{ram === null ? text("block.noRam") : (ram.name ?? ram.id)}</dd>
      </div>
      <div>
        <dt>{text("block.assumed")}</dt>
        <dd>{text("block.assumedCount", { count: assumed })}</dd>
      </div>
    </dl>
  );
}
