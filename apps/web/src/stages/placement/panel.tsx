import { proxy as told } from "comlink";
import { type KeyboardEvent, lazy, type ReactNode, Suspense, useId, useState } from "react";
import { text } from "../../strings/text.ts";
import { useSearch } from "../../worker/use-search.ts";
import { useBench } from "./bench.ts";
import { LimitList } from "./limit-list.tsx";
import { useQuestion, useWhenSettled } from "./question.ts";
import type { RamTold } from "./rams.tsx";
import { Verdict } from "./verdict.tsx";

// What the first drawing does not need comes when its tab is opened.
const AsBuilt = lazy(async () => ({ default: (await import("../as-built/as-built.tsx")).AsBuilt }));
const Places = lazy(async () => ({ default: (await import("./places.tsx")).Places }));
const Rams = lazy(async () => ({ default: (await import("./rams.tsx")).Rams }));
const PapersTab = lazy(async () => ({ default: (await import("../papers/papers.tsx")).PapersTab }));
const Values = lazy(async () => ({ default: (await import("./values.tsx")).Values }));

const tabs = ["decides", "others", "rams", "built", "papers", "values"] as const;
type Tab = (typeof tabs)[number];

/** Beside the drawing: the verdict, what decides, other places and rams, the gate as built, every value. */
export function Panel({ map }: { readonly map: ReactNode }) {
  const bench = useBench();
  const { job, leafIndex, leaf } = bench;
  const [tab, setTab] = useState<Tab>(leaf.ram === undefined ? "rams" : "decides");
  const id = useId();
  const places = useSearch((searches, _: (told: never) => void) => searches.places(job, leafIndex));
  const rams = useSearch((searches, tell: (told: RamTold) => void) =>
    searches.rams(
      job,
      leafIndex,
      told((done, count, name) => tell({ done, count, name })),
    ),
  );
  const hasReach = leaf.reach !== undefined || leaf.brackets !== undefined;
  useWhenSettled(useQuestion(job, leafIndex, false), tab === "others" && hasReach, places.start);
  useWhenSettled(useQuestion(job, leafIndex, true), tab === "rams" && hasReach, rams.start);
  const onKeyDown = (event: KeyboardEvent) => {
    const by = { ArrowLeft: -1, ArrowRight: 1 }[event.key];
    if (by === undefined) return;
    const next = tabs[(tabs.indexOf(tab) + by + tabs.length) % tabs.length] as Tab;
    setTab(next);
    document.getElementById(`${id}-${next}`)?.focus();
  };
  return (
    <aside className="panel" aria-label={text("panel.name")} id="decides" tabIndex={-1}>
      <Verdict bench={bench} />
      <div className="panel-tabs" role="tablist" aria-label={text("panel.name")} onKeyDown={onKeyDown}>
        {tabs.map((one) => (
          <button
            key={one}
            type="button"
            role="tab"
            id={`${id}-${one}`}
            aria-selected={one === tab}
            aria-controls={`${id}-body`}
            tabIndex={one === tab ? 0 : -1}
            onClick={() => setTab(one)}
          >
            {text(`panel.${one}`)}
          </button>
        ))}
      </div>
      <div role="tabpanel" id={`${id}-body`} aria-labelledby={`${id}-${tab}`}>
        <Suspense>
          {tab === "decides" &&
            (bench.gate === null ? null : <LimitList bench={bench} limits={bench.gate.limits} />)}
          {tab === "others" && (
            <>
              {map}
              <Places bench={bench} search={places.search} start={places.start} stop={places.stop} />
            </>
          )}
          {tab === "rams" && <Rams bench={bench} search={rams.search} start={rams.start} stop={rams.stop} />}
          {tab === "built" && <AsBuilt bench={bench} />}
          {tab === "papers" && <PapersTab bench={bench} />}
          {tab === "values" && <Values bench={bench} />}
        </Suspense>
      </div>
    </aside>
  );
}
