import type { Job } from "@pintle/job";
import type { KeptJob } from "@pintle/store";
import { useSyncExternalStore } from "react";
import type { ChangeJob } from "../stages/placement/bench.ts";
import { text } from "../strings/text.ts";
import { type Theme, themes } from "../theme/theme.ts";
import { exportJob } from "./job-files.ts";
import { titleOf } from "./use-job.ts";

/** Whose gate it is, which leaf, undo and redo, units, theme, and whether it is kept. */
export function TopBar(props: {
  readonly kept: KeptJob;
  readonly job: Job;
  readonly change: ChangeJob;
  readonly leafIndex: number;
  readonly chooseLeaf: (index: number) => void;
  readonly keeping: string;
  readonly theme: Theme;
  readonly chooseTheme: (theme: Theme) => void;
}) {
  const { job, kept, change } = props;
  const { live } = kept;
  const undo = useSyncExternalStore(live.subscribe, live.getUndoState);
  return (
    <header className="top">
      <a href="#/jobs">{text("app.jobs")}</a>
      <h1>{titleOf(job.title)}</h1>
      {job.leaves.length > 1 && (
        <label>
          <span className="unseen">{text("app.leaf")}</span>
          <select value={props.leafIndex} onChange={(event) => props.chooseLeaf(Number(event.target.value))}>
            {job.leaves.map((leaf, index) => (
              <option key={leaf.id} value={index}>
                {text("drawn.otherLeaf", { leaf: leaf.id })}
              </option>
            ))}
          </select>
        </label>
      )}
      <span>
        <button
          type="button"
          className="plain"
          disabled={undo.undo === null}
          title={undo.undo === null ? undefined : text("app.undoWhat", { what: undo.undo })}
          onClick={() => live.undo()}
        >
          {text("app.undo")}
        </button>
        <button
          type="button"
          className="plain"
          disabled={undo.redo === null}
          title={undo.redo === null ? undefined : text("app.redoWhat", { what: undo.redo })}
          onClick={() => live.redo()}
        >
          {text("app.redo")}
        </button>
      </span>
      <label>
        <span className="unseen">{text("app.units")}</span>
        <select
          value={job.display ?? "metric"}
          onChange={(event) => change([{ path: ["display"], value: event.target.value }], text("edit.units"))}
        >
          <option value="metric">{text("app.metric")}</option>
          <option value="us">{text("app.us")}</option>
        </select>
      </label>
      <details className="more">
        <summary>{text("app.more")}</summary>
        <div>
          <label>
            <span>{text("app.theme")}</span>
            <select value={props.theme} onChange={(event) => props.chooseTheme(event.target.value as Theme)}>
              {themes.map((theme) => (
                <option key={theme} value={theme}>
                  {text(`app.theme.${theme}`)}
                </option>
              ))}
            </select>
          </label>
          <button type="button" className="plain" onClick={() => exportJob(job)}>
            {text("jobs.export")}
          </button>
          <span className="quiet">{props.keeping}</span>
        </div>
      </details>
      <span className="kept">{props.keeping}</span>
    </header>
  );
}
