import { judgeDocument } from "@pintle/job";
import { type ReactNode, useEffect, useMemo, useRef, useState } from "react";
import { type Change, changed } from "../jobs/change.ts";
import { withTypedOrigin } from "../jobs/typed-origin.ts";
import { useBench } from "../stages/placement/bench.ts";
import { onDimension, shownDeg, shownMm } from "../stages/placement/shown.ts";
import { text } from "../strings/text.ts";
import { AngleDimensions } from "./angle-dimension.tsx";
import { DimensionLine } from "./dimension.tsx";
import { leafDimensions, pinDimensions, type TypedDimension } from "./dimensions.ts";
import {
  BracketArms,
  HingeMark,
  LeafDrawing,
  LeverDrawing,
  OtherLeaves,
  Pins,
  RamDrawing,
} from "./gate-drawing.tsx";
import { ramShape } from "./gate-shapes.ts";
import { Handles } from "./handles.tsx";
import { Inset } from "./inset.tsx";
import { LimitMarks } from "./limit-mark.tsx";
import { HatchPattern } from "./marks.tsx";
import {
  type Projection,
  pannedBy,
  projection,
  type Spot,
  type View,
  viewOf,
  zoomedAt,
} from "./projection.ts";
import { SheetTools } from "./sheet-tools.tsx";
import { StandingThings } from "./standing.tsx";
import { TitleBlock } from "./title-block.tsx";
import { type Typing, TypingBox } from "./typing-box.tsx";
import { usePanAndZoom, usePaperSize } from "./use-paper.ts";
import { nearHinge, wholeGate } from "./views.ts";

/** Height of what lies along the foot of the sheet [px]. */
const toolsHeight = 56;

/** The sheet: the plan to scale, where everything is moved, typed and shown. `layer` is drawn on the post. */
export function Sheet(props: {
  readonly layer: (on: Projection) => ReactNode;
  /** Plan points [mm] to bring into sight when they are first given. */
  readonly lookAt: readonly Spot[] | null;
}) {
  const { layer, lookAt } = props;
  const bench = useBench();
  const { leaf, ram, theta, display } = bench;
  const box = useRef<HTMLDivElement>(null);
  const svg = useRef<SVGSVGElement>(null);
  const paper = usePaperSize(box);
  const [chosen, setChosen] = useState<View | "near" | "whole">("near");
  const [fromOtherSide, setFromOtherSide] = useState(false);
  const [typing, setTyping] = useState<Typing | null>(null);

  // A fitted view must not chase what is being dragged: it is fitted anew only for another leaf or paper.
  // biome-ignore lint/correctness/useExhaustiveDependencies: see above
  const fitted = useMemo(() => {
    if (paper === null) return null;
    const narrow = paper.width < 640;
    const spots = chosen === "whole" ? wholeGate(bench) : nearHinge(bench);
    const clear = { ...paper, height: paper.height - toolsHeight };
    const made = viewOf(spots, clear, narrow ? (chosen === "whole" ? 26 : 52) : 64);
    // Fitted above the tools, which lie along the foot of the sheet.
    return pannedBy(made, projection(made, paper, leaf.hingeSide, fromOtherSide), 0, -toolsHeight / 2);
  }, [paper, chosen === "whole", fromOtherSide, leaf.id, leaf.hingeSide, leaf.swing]);
  const view = typeof chosen === "object" ? chosen : fitted;
  const on = paper === null || view === null ? null : projection(view, paper, leaf.hingeSide, fromOtherSide);
  const { toSheet, handlers } = usePanAndZoom(
    svg,
    on,
    view ?? { centre: { x: 0, y: 0 }, scale: 1 },
    setChosen,
  );

  const lookedAt = useRef(lookAt);
  useEffect(() => {
    if (lookAt !== null && paper !== null) setChosen(viewOf(lookAt, paper, Math.min(110, paper.width / 5)));
    else if (lookAt === null && lookedAt.current !== null) setChosen("near");
    lookedAt.current = lookAt;
  }, [lookAt, paper]);

  const typed = (dimension: TypedDimension, at: Spot): Typing => ({
    name: dimension.name,
    shown: dimension.label,
    quantity: dimension.quantity,
    at,
    keep: (value) => kept([{ path: dimension.path, value: dimension.toJob(value) }], dimension.name),
  });
  const kept = (changes: readonly Change[], label: string): string | null => {
    const judged = judgeDocument(changed(bench.job, changes));
    if (judged.ok) {
      bench.change(withTypedOrigin(changes), label);
      return null;
    }
    const { found = "", expected = "" } = judged.faults[0] ?? {};
    return text("dimension.refused", { found, expected });
  };
  const typeAngle = (which: "theta" | "openAngle", at: Spot) =>
    setTyping({
      name: text(which === "theta" ? "dimension.theta" : "dimension.openAngle"),
      shown: shownDeg(which === "theta" ? (theta * 180) / Math.PI : leaf.openAngleDeg).replace("°", ""),
      quantity: "angle",
      at,
      keep: (value) => {
        if (which === "openAngle") {
          const path = ["leaves", bench.leafIndex, "openAngleDeg"];
          return kept([{ path, value }], text("dimension.openAngle"));
        }
        bench.setTheta((Math.min(Math.max(value, 0), leaf.openAngleDeg) * Math.PI) / 180);
        return null;
      },
    });

  const shape = leaf.placement === undefined ? null : ramShape(leaf, ram, leaf.placement, theta);
  const dimensions =
    on === null
      ? []
      : [...(chosen === "whole" ? leafDimensions(bench, on) : []), ...pinDimensions(bench, on)];
  return (
    <div
      className={`sheet${lookAt === null ? "" : " with-map"}${on?.flipX === -1 ? " runs-left" : ""}`}
      ref={box}
    >
      {/* biome-ignore lint/a11y/useSemanticElements: a drawing holds what is moved on it */}
      <svg ref={svg} {...handlers} role="group" aria-label={text("sheet.name", { leaf: leaf.id })}>
        <desc>{summary(bench)}</desc>
        <defs>
          <HatchPattern />
        </defs>
        {on !== null && (
          <>
            <StandingThings leaf={leaf} on={on} />
            <OtherLeaves bench={bench} on={on} />
            <LeafDrawing bench={bench} on={on} />
            <BracketArms bench={bench} on={on} />
            {shape !== null && <RamDrawing shape={shape} on={on} />}
            {layer(on)}
            {shape !== null && <LeverDrawing bench={bench} shape={shape} on={on} />}
            <HingeMark on={on} />
            {shape !== null && <Pins shape={shape} on={on} />}
            <AngleDimensions bench={bench} on={on} press={typeAngle} />
            {dimensions.map((dimension) => (
              <DimensionLine
                key={dimension.id}
                dimension={dimension}
                on={on}
                press={(_, at) => setTyping(typed(dimension, at))}
                pressName={text("dimension.type", {
                  name: dimension.name,
                  value: onDimension(dimension.value, display),
                })}
              />
            ))}
            <LimitMarks bench={bench} on={on} />
            <Handles bench={bench} on={on} toSheet={toSheet} />
          </>
        )}
      </svg>
      {chosen !== "whole" && lookAt === null && (
        <Inset bench={bench} fromOtherSide={fromOtherSide} press={() => setChosen("whole")} />
      )}
      <SheetTools
        shows={typeof chosen === "string" ? chosen : "own"}
        fromOtherSide={fromOtherSide}
        near={() => setChosen("near")}
        whole={() => setChosen("whole")}
        zoom={(factor) => {
          if (on === null || view === null) return;
          setChosen(zoomedAt(view, on, { x: on.width / 2, y: on.height / 2 }, factor));
        }}
        turn={() => setFromOtherSide(!fromOtherSide)}
      />
      {on !== null && <TitleBlock bench={bench} scale={on.scale} fromOtherSide={fromOtherSide} />}
      {typing !== null && on !== null && (
        <TypingBox key={typing.name} typing={typing} width={on.width} close={() => setTyping(null)} />
      )}
    </div>
  );
}

/** The drawing in one sentence, for those who cannot see it. */
function summary({ leaf, theta, display }: ReturnType<typeof useBench>): string {
  const pins = leaf.placement;
  const mm = (value: number | undefined) => (value === undefined ? "?" : shownMm(value, display));
  return text("sheet.summary", {
    hinge: text(leaf.hingeSide === "left" ? "sheet.left" : "sheet.right"),
    angle: shownDeg(leaf.openAngleDeg),
    swing: text(leaf.swing === "toward" ? "sheet.toward" : "sheet.away"),
    postAlong: mm(pins && -pins.postPin.alongMm),
    postOut: mm(pins?.postPin.outMm),
    leafAlong: mm(pins?.leafPin.alongMm),
    leafOff: mm(pins?.leafPin.offMm),
    theta: shownDeg((theta * 180) / Math.PI),
  });
}
