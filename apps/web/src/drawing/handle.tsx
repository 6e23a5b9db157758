import { type KeyboardEvent, type PointerEvent, useRef } from "react";
import type { Projection, Spot } from "./projection.ts";

const hitRadius = 23;

/**
 * A point of the drawing that is dragged or moved by the arrow keys. `move` gets plan points [mm]; `step` gets
 * plan directions of one press, already turned to what is left, right, up and down on the screen.
 */
export function Handle(props: {
  readonly id: string;
  readonly at: Spot;
  readonly on: Projection;
  readonly label: string;
  readonly role: "button" | "slider";
  readonly roleText?: string;
  readonly values?: { readonly now: number; readonly most: number; readonly words: string };
  readonly mark: "ring" | "square" | "grip";
  readonly toSheet: (event: PointerEvent) => Spot;
  readonly start: () => void;
  readonly move: (spot: Spot) => void;
  readonly end: (kept: boolean) => void;
  readonly step: (direction: Spot, coarse: boolean) => void;
}) {
  const { at, on, mark } = props;
  const grip = useRef<{ dx: number; dy: number; moved: boolean } | null>(null);
  const screen = on.toScreen(at);
  const onKeyDown = (event: KeyboardEvent) => {
    const press = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] }[event.key];
    if (press === undefined) return;
    event.preventDefault();
    const [x, y] = press as [number, number];
    props.step({ x: x * on.flipX, y: y * on.flipY }, event.shiftKey);
  };
  const onPointerDown = (event: PointerEvent<SVGGElement>) => {
    if (event.button !== 0 || !event.isPrimary) return;
    event.stopPropagation();
    event.currentTarget.setPointerCapture(event.pointerId);
    event.currentTarget.focus({ preventScroll: true });
    const touched = props.toSheet(event);
    grip.current = { dx: screen.x - touched.x, dy: screen.y - touched.y, moved: false };
    props.start();
  };
  const onPointerMove = (event: PointerEvent<SVGGElement>) => {
    const held = grip.current;
    if (held === null) return;
    event.stopPropagation();
    held.moved = true;
    const touched = props.toSheet(event);
    props.move(on.toPlan({ x: touched.x + held.dx, y: touched.y + held.dy }));
  };
  const finish = (kept: boolean) => () => {
    if (grip.current === null) return;
    const { moved } = grip.current;
    grip.current = null;
    props.end(kept && moved);
  };
  const { values } = props;
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: its role is given below
    // biome-ignore lint/a11y/useAriaPropsSupportedByRole: values are given with the role of a slider only
    <g
      className={`handle ${mark}`}
      data-handle={props.id}
      role={props.role}
      tabIndex={0}
      aria-label={props.label}
      aria-roledescription={props.roleText}
      aria-valuemin={values && 0}
      aria-valuenow={values?.now}
      aria-valuemax={values?.most}
      aria-valuetext={values?.words}
      transform={`translate(${screen.x.toFixed(2)} ${screen.y.toFixed(2)})`}
      onKeyDown={onKeyDown}
      onFocus={props.start}
      onPointerDown={onPointerDown}
      onPointerMove={onPointerMove}
      onPointerUp={finish(true)}
      onPointerCancel={finish(false)}
    >
      <circle className="target" r={hitRadius} />
      {mark === "ring" && <circle className="ring" r="13" />}
      {mark === "square" && <rect className="corner" x="-4" y="-4" width="8" height="8" />}
      {mark === "grip" && <circle className="ring" r="9" />}
    </g>
  );
}
