import type { ReserveMap } from "@pintle/core";
import { bestCell } from "../../drawing/map-cell.ts";
import { text } from "../../strings/text.ts";
import type { Search } from "../../worker/use-search.ts";
import type { Bench } from "./bench.ts";
import { shownMm } from "./shown.ts";

/** Shows and hides the map of where the post pin may go, with its progress and its sense in words. */
export function MapControl(props: {
  readonly bench: Bench;
  readonly search: Search<ReserveMap | null, number>;
  readonly isShown: boolean;
  readonly show: () => void;
  readonly hide: () => void;
}) {
  const { bench, search, isShown } = props;
  const { display } = bench;
  const map = search.state === "done" ? search.found : null;
  const best = map === null ? null : bestCell(map);
  return (
    <section className="map-control">
      <button type="button" aria-pressed={isShown} onClick={isShown ? props.hide : props.show}>
        {text(isShown ? "map.hide" : "map.show")}
      </button>
      {search.state === "working" && (
        <div className="working">
          <p role="status">{text("map.working", { share: percent(search.told ?? 0) })}</p>
          <progress value={search.told ?? 0} max={1} aria-label={text("map.legend")} />
        </div>
      )}
      {isShown && search.state === "done" && (
        <p className="quiet">
          {text("map.legend")}.{" "}
          {best === null
            ? text("map.nothing")
            : text("map.best", {
                reserve: shownMm(Math.floor(best.reserveMm * 10) / 10, display),
                along: shownMm(-Math.round(best.post.x), display),
                out: shownMm(Math.round(best.post.y), display),
              })}
        </p>
      )}
    </section>
  );
}

const percent = (share: number): string =>
  new Intl.NumberFormat(undefined, { style: "percent" }).format(share);
