import { displayUnit, fromSi, parseQuantity } from "@pintle/job";
import { type FormEvent, useEffect, useId, useRef, useState } from "react";
import { useBench } from "../stages/placement/bench.ts";
import { text } from "../strings/text.ts";
import type { Spot } from "./projection.ts";

/** A number being typed where it stands on the drawing. `keep` says what is wrong with it, or null when it is kept. */
export interface Typing {
  readonly name: string;
  readonly shown: string;
  readonly quantity: "length" | "angle";
  readonly at: Spot;
  /** Gets millimetres or degrees. */
  readonly keep: (typed: number) => string | null;
}

export function TypingBox(props: {
  readonly typing: Typing;
  readonly width: number;
  readonly close: () => void;
}) {
  const { typing, close } = props;
  const { display } = useBench();
  const [written, setWritten] = useState(typing.shown);
  const [fault, setFault] = useState<string | null>(null);
  const input = useRef<HTMLInputElement>(null);
  const faultId = useId();
  const unit = typing.quantity === "angle" ? "deg" : displayUnit("length", display);
  useEffect(() => {
    input.current?.focus();
    input.current?.select();
  }, []);
  const keep = (event: FormEvent) => {
    event.preventDefault();
    const read = parseQuantity(typing.quantity, written, unit);
    if (!read.ok) return setFault(text("dimension.expected", { expected: read.expected }));
    const refused = typing.keep(fromSi(read.si, typing.quantity === "angle" ? "deg" : "mm"));
    if (refused === null) close();
    else setFault(refused);
  };
  const left = Math.min(Math.max(typing.at.x, 150), Math.max(150, props.width - 150));
  return (
    <form
      className="typing-box"
      style={{ left, top: Math.max(8, typing.at.y - 28) }}
      onSubmit={keep}
      onKeyDown={(event) => event.key === "Escape" && close()}
    >
      <label>
        <span>{typing.name}</span>
        <span className="typing-line">
          <input
            ref={input}
            value={written}
            autoComplete="off"
            spellCheck={false}
            inputMode={display === "us" ? "text" : "decimal"}
            aria-invalid={fault !== null}
            aria-describedby={fault === null ? undefined : faultId}
            onChange={(event) => setWritten(event.target.value)}
          />
          <span className="unit">{unit === "deg" ? "°" : unit}</span>
        </span>
      </label>
      {fault !== null && (
        <p className="fault" id={faultId} role="alert">
          {fault}
        </p>
      )}
      <span className="typing-buttons">
        <button type="submit" className="strong">
          {text("dimension.keep")}
        </button>
        <button type="button" onClick={close}>
          {text("dimension.cancel")}
        </button>
      </span>
    </form>
  );
}
