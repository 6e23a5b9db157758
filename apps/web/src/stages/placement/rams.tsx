import type { RamRankDocument } from "@pintle/job";
import { text } from "../../strings/text.ts";
import type { Search } from "../../worker/use-search.ts";
import type { Bench } from "./bench.ts";
import { shownMm } from "./shown.ts";
import { pinsTaken } from "./take-pins.ts";

export interface RamTold {
  readonly done: number;
  readonly count: number;
  readonly name: string;
}

/** The rams of the job on this leaf, best reserve first, then those that do not suit and why. */
export function Rams(props: {
  readonly bench: Bench;
  readonly search: Search<readonly RamRankDocument[], RamTold>;
  readonly start: () => void;
  readonly stop: () => void;
}) {
  const { bench, search } = props;
  return (
    <section className="rams" aria-label={text("rams.heading")}>
      <h3>{text("rams.heading")}</h3>
      {search.state === "working" && (
        <div className="working" role="status">
          <p>
            {text("rams.working", {
              name: search.told?.name ?? "…",
              done: (search.told?.done ?? 0) + 1,
              count: search.told?.count ?? bench.job.rams?.length ?? 0,
            })}
          </p>
          <progress
            value={search.told?.done ?? 0}
            max={search.told?.count ?? 1}
            aria-label={text("rams.heading")}
          />
          <button type="button" onClick={props.stop}>
            {text("others.cancel")}
          </button>
        </div>
      )}
      {(search.state === "stopped" || search.state === "idle") && (
        <button type="button" onClick={props.start}>
          {text("rams.rank")}
        </button>
      )}
      {search.state === "done" && <Ranked bench={bench} ranks={search.found} />}
    </section>
  );
}

function Ranked({ bench, ranks }: { readonly bench: Bench; readonly ranks: readonly RamRankDocument[] }) {
  const { job, leafIndex, display, ram, change } = bench;
  const nameOf = (id: string) => job.rams?.find((one) => one.id === id)?.name ?? id;
  const most = Math.max(...ranks.map((rank) => rank.reserveMm ?? 0), 1);
  const swap = (rank: RamRankDocument) => {
    if (rank.placement === null) return;
    change(
      [{ path: ["leaves", leafIndex, "ram"], value: rank.ram }, ...pinsTaken(job, leafIndex, rank.placement)],
      `${text("edit.ram")}: ${nameOf(rank.ram)}`,
    );
  };
  const suited = ranks.filter((rank) => rank.placement !== null);
  const unsuited = ranks.filter((rank) => rank.placement === null);
  return (
    <>
      <ol className="ranked">
        {suited.map((rank) => (
          <li key={rank.ram}>
            <span className="limit-name">{nameOf(rank.ram)}</span>
            <span>
              {text("rams.reserve", {
                reserve: shownMm(Math.floor((rank.reserveMm ?? 0) * 10) / 10, display),
              })}
            </span>
            <button type="button" disabled={rank.ram === ram?.id} onClick={() => swap(rank)}>
              {text(rank.ram === ram?.id ? "rams.used" : ram === null ? "rams.take" : "rams.swap")}
            </button>
            <svg className="slack-bar" viewBox="0 0 100 10" preserveAspectRatio="none" aria-hidden="true">
              <line className="track" x1="0" x2="100" y1="5" y2="5" />
              <rect
                className="slack"
                width={(100 * Math.max(0, rank.reserveMm ?? 0)) / most}
                y="2"
                height="6"
              />
            </svg>
          </li>
        ))}
      </ol>
      <p className="quiet">{text("rams.swappedNote")}</p>
      {unsuited.length > 0 && (
        <>
          <h3>{text("rams.unsuited")}</h3>
          <ul className="unsuited">
            {unsuited.map((rank) => (
              <li key={rank.ram}>
                <b>{nameOf(rank.ram)}</b> <span className="quiet">{rank.reasons.join("; ")}</span>
              </li>
            ))}
          </ul>
        </>
      )}
    </>
  );
}
