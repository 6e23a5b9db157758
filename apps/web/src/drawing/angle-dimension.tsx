import type { Bench } from "../stages/placement/bench.ts";
import { shownDeg } from "../stages/placement/shown.ts";
import { text } from "../strings/text.ts";
import { openAngleLabel } from "./dimensions.ts";
import { onPlan, turnOf } from "./gate-shapes.ts";
import { Note, pathData } from "./marks.tsx";
import type { Projection, Spot } from "./projection.ts";

/** The angle of the leaf as an arc, and the opening angle at the open leaf; both are pressed to type. */
export function AngleDimensions(props: {
  readonly bench: Bench;
  readonly on: Projection;
  readonly press: (which: "theta" | "openAngle", at: Spot) => void;
}) {
  const { bench, on, press } = props;
  const { leaf, theta, openAngle } = bench;
  const radius = Math.min(on.width < 640 ? 62 : 96, leaf.lengthMm * on.scale * 0.5) / on.scale;
  const outer = Math.min(1.62 * radius, leaf.lengthMm * 0.8);
  const turned = (angle: number, at: number) => on.toScreen(onPlan(at, 0, turnOf(leaf, angle)));
  const arc = Array.from({ length: 25 }, (_, i) => turned((theta * i) / 24, radius));
  const half = turned(theta / 2, radius * 1.2);
  const beyond = turned(openAngle + 0.27, outer);
  const now = shownDeg((theta * 180) / Math.PI);
  return (
    <g className="dimension">
      {theta > 0.02 && <path d={pathData(arc, false)} fill="none" />}
      <Press
        at={theta > 0.2 ? half : turned(-0.12, radius)}
        name={text("dimension.type", { name: text("dimension.theta"), value: now })}
        label={now}
        id="theta"
        moving
        press={(at) => press("theta", at)}
      />
      <Press
        at={beyond}
        name={text("dimension.type", {
          name: text("dimension.openAngle"),
          value: openAngleLabel(bench),
        })}
        label={openAngleLabel(bench)}
        id="openAngle"
        press={(at) => press("openAngle", at)}
      />
    </g>
  );
}

function Press(props: {
  readonly at: Spot;
  readonly name: string;
  readonly label: string;
  readonly id: string;
  readonly moving?: boolean;
  readonly press: (at: Spot) => void;
}) {
  const wide = Math.max(44, props.label.length * 7.6);
  return (
    // biome-ignore lint/a11y/useSemanticElements: a button inside a drawing cannot be an HTML button
    <g
      className={`press${props.moving ? " moving" : ""}`}
      role="button"
      tabIndex={0}
      aria-label={props.name}
      data-dimension={props.id}
      onClick={() => props.press(props.at)}
      onKeyDown={(event) => {
        if (event.key !== "Enter" && event.key !== " ") return;
        event.preventDefault();
        props.press(props.at);
      }}
      onPointerDown={(event) => event.stopPropagation()}
    >
      <rect className="target" x={props.at.x - wide / 2} y={props.at.y - 27} width={wide} height="44" />
      <Note at={props.at} className="number">
        {props.label}
      </Note>
    </g>
  );
}
