import { text } from "../strings/text.ts";

/** What can be done with the sheet itself: near or whole, zoom, and the side that it is seen from. */
export function SheetTools(props: {
  readonly shows: "near" | "whole" | "own";
  readonly fromOtherSide: boolean;
  readonly near: () => void;
  readonly whole: () => void;
  readonly zoom: (factor: number) => void;
  readonly turn: () => void;
}) {
  return (
    <div className="sheet-tools">
      <button
        type="button"
        className="round"
        aria-label={text("sheet.zoomIn")}
        onClick={() => props.zoom(1.3)}
      >
        +
      </button>
      <button
        type="button"
        className="round"
        aria-label={text("sheet.zoomOut")}
        onClick={() => props.zoom(1 / 1.3)}
      >
        −
      </button>
      <button type="button" aria-pressed={props.shows === "near"} onClick={props.near}>
        {text("sheet.near")}
      </button>
      <button type="button" aria-pressed={props.shows === "whole"} onClick={props.whole}>
        {text("sheet.whole")}
      </button>
      <button type="button" aria-pressed={props.fromOtherSide} onClick={props.turn}>
        {text("sheet.otherSide")}
      </button>
    </div>
  );
}
