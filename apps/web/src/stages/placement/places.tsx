import type { PlaceLeafDocument, PlacementDocument } from "@pintle/job";
import { displayUnit, formatQuantity, toSi } from "@pintle/job";
import { text } from "../../strings/text.ts";
import type { Search } from "../../worker/use-search.ts";
import type { Bench } from "./bench.ts";
import { NothingFits } from "./nothing-fits.tsx";
import { shownMm } from "./shown.ts";
import { arePlanned, pinsTaken } from "./take-pins.ts";

/** The best few placements in reach, side by side, or why there is none. */
export function Places(props: {
  readonly bench: Bench;
  readonly search: Search<PlaceLeafDocument, never>;
  readonly start: () => void;
  readonly stop: () => void;
}) {
  const { bench, search } = props;
  return (
    <section className="places" aria-label={text("others.heading")}>
      <h3>{text("others.heading")}</h3>
      {search.state === "working" && (
        <p className="working" role="status">
          {text("others.searching")}{" "}
          <button type="button" onClick={props.stop}>
            {text("others.cancel")}
          </button>
        </p>
      )}
      {search.state === "stopped" && (
        <p className="working">
          {text("others.stopped")}{" "}
          <button type="button" onClick={props.start}>
            {text("others.again")}
          </button>
        </p>
      )}
      {search.state === "done" && <Found bench={bench} found={search.found} />}
    </section>
  );
}

function Found({ bench, found }: { readonly bench: Bench; readonly found: PlaceLeafDocument }) {
  if (found.notSearched !== undefined)
    return <p className="quiet">{text("others.notSearched", { why: found.notSearched })}</p>;
  if (found.nothingFits !== null) return <NothingFits bench={bench} why={found.nothingFits} />;
  return <Compared bench={bench} placements={found.placements} />;
}

/** Trade-offs side by side: a column for each placement, a row for each thing that they differ in. */
function Compared(props: { readonly bench: Bench; readonly placements: readonly PlacementDocument[] }) {
  const { bench, placements } = props;
  const { job, leafIndex, display, change } = bench;
  const mm = (value: number | null) => (value === null ? "–" : shownMm(value, display));
  const speed = (value: number | null) =>
    value === null ? "–" : formatQuantity(toSi(value, "mm/s"), displayUnit("toeSpeed", display));
  const rows: readonly [string, (one: PlacementDocument) => string][] = [
    [text("others.row.reserve"), (one) => mm(Math.floor(one.reserveMm * 10) / 10)],
    [text("others.row.lever"), (one) => mm(one.tradeOffs.leastLeverMm)],
    [text("others.row.toe"), (one) => speed(one.tradeOffs.toeSpeedMmS)],
    [
      text("others.row.time"),
      ({ tradeOffs }) =>
        tradeOffs.openingTimeS === null
          ? "–"
          : text("others.seconds", { count: Math.round(tradeOffs.openingTimeS) }),
    ],
    [text("others.row.clear"), (one) => mm(one.tradeOffs.leafClearanceMm)],
    [text("others.row.stands"), (one) => mm(one.tradeOffs.standsOutMm)],
    [text("others.row.postAlong"), (one) => mm(-one.postPin.alongMm)],
    [text("others.row.postOut"), (one) => mm(one.postPin.outMm)],
    [text("others.row.leafAlong"), (one) => mm(one.leafPin.alongMm)],
    [text("others.row.leafOff"), (one) => mm(one.leafPin.offMm)],
  ];
  return (
    <ol className="compared">
      {placements.map((one) => {
        const isUsed = arePlanned(job, leafIndex, one);
        return (
          <li key={`${one.kind} ${one.postBracket}`} className={isUsed ? "chosen" : ""}>
            <h4>{withCapital(one.kindText)}</h4>
            <dl>
              {rows.map(([name, shownOf]) => (
                <div key={name}>
                  <dt>{name}</dt>
                  <dd>{shownOf(one)}</dd>
                </div>
              ))}
            </dl>
            <button
              type="button"
              disabled={isUsed}
              onClick={() => change(pinsTaken(job, leafIndex, one), text("edit.place"))}
            >
              {text(isUsed ? "others.used" : "others.use")}
            </button>
          </li>
        );
      })}
    </ol>
  );
}

const withCapital = (words: string) => words.charAt(0).toUpperCase() + words.slice(1);
