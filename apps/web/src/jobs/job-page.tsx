import type { KeptJob } from "@pintle/store";
import { useEffect, useState } from "react";
import { PlacementStage } from "../stages/placement/placement-stage.tsx";
import { text } from "../strings/text.ts";
import type { Theme } from "../theme/theme.ts";
import { demoId } from "./demo.ts";
import type { Device } from "./device.ts";
import { HintBar } from "./hint-bar.tsx";
import { exportJob } from "./job-files.ts";
import { TopBar } from "./top-bar.tsx";
import { titleOf, useKeeping, useLiveJob, useOpenJob } from "./use-job.ts";

interface Look {
  readonly theme: Theme;
  readonly chooseTheme: (theme: Theme) => void;
}

/** One job on the table. */
export function JobPage(props: { readonly device: Device; readonly jobId: string } & Look) {
  const opening = useOpenJob(props.device, props.jobId);
  if (opening.state === "open") return <OpenJobPage {...props} kept={opening.kept} />;
  return (
    <main className="page">
      <p role="status">
        {opening.state === "opening"
          ? text("app.loading")
          : text("app.cannotOpen", { message: opening.message })}
      </p>
      {opening.state === "failed" && <a href="#/jobs">{text("app.jobs")}</a>}
    </main>
  );
}

function OpenJobPage(props: { readonly kept: KeptJob; readonly jobId: string } & Look) {
  const { kept, jobId } = props;
  const { job, change, fault } = useLiveJob(kept);
  const keeping = useKeeping(kept);
  const [leafIndex, setLeafIndex] = useState(0);
  const shownLeaf = Math.min(leafIndex, job.leaves.length - 1);
  useEffect(() => {
    document.title = `${titleOf(job.title)} – ${text("app.name")}`;
  }, [job.title]);
  useUndoKeys(kept);
  return (
    <div className="app">
      <TopBar
        kept={kept}
        job={job}
        change={change}
        leafIndex={shownLeaf}
        chooseLeaf={setLeafIndex}
        keeping={keeping.words}
        theme={props.theme}
        chooseTheme={props.chooseTheme}
      />
      <main className="stage">
        <div>
          {keeping.isLost && (
            <div className="bar fault" role="alert">
              <p>{keeping.words}</p>
              <button type="button" onClick={keeping.retry}>
                {text("app.retry")}
              </button>
              <button type="button" onClick={() => exportJob(job)}>
                {text("jobs.export")}
              </button>
            </div>
          )}
          {fault !== null && (
            <p className="bar fault" role="alert">
              {fault}
            </p>
          )}
          {jobId === demoId && <HintBar />}
        </div>
        <PlacementStage key={shownLeaf} job={job} leafIndex={shownLeaf} change={change} />
      </main>
    </div>
  );
}

/** Ctrl+Z, Ctrl+Shift+Z and Ctrl+Y, except where text is being typed. */
function useUndoKeys({ live }: KeptJob): void {
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      if (!(event.ctrlKey || event.metaKey) || event.altKey) return;
      if (event.target instanceof HTMLInputElement || event.target instanceof HTMLTextAreaElement) return;
      const key = event.key.toLowerCase();
      if (key !== "z" && key !== "y") return;
      event.preventDefault();
      if (key === "y" || event.shiftKey) live.redo();
      else live.undo();
    };
    addEventListener("keydown", onKey);
    return () => removeEventListener("keydown", onKey);
  }, [live]);
}
