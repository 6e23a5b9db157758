import { lazy, Suspense, useEffect, useState } from "react";
import { demoId } from "./jobs/demo.ts";
import type { Device } from "./jobs/device.ts";
import { JobPage } from "./jobs/job-page.tsx";
import { go, jobAddress, usePlace } from "./jobs/place.ts";
import { UpdateBar } from "./offline/update-bar.tsx";
import { keepTheme, keptTheme, type Theme } from "./theme/theme.ts";

// What the first drawing does not need comes when it is asked for.
const JobListPage = lazy(async () => ({ default: (await import("./jobs/job-list.tsx")).JobListPage }));
const NewJob = lazy(async () => ({ default: (await import("./jobs/new-job.tsx")).NewJob }));

/** The workbench: one job on the table, the list of jobs, or the questions of a new one. */
export function App({ device }: { readonly device: Device }) {
  const place = usePlace();
  const [theme, setTheme] = useState(keptTheme);
  const chooseTheme = (next: Theme) => {
    keepTheme(next);
    setTheme(next);
  };
  useEffect(() => {
    if (place.at !== "start") return;
    // The job worked on last; on a first visit the made-up farm.
    void device.list.refresh().then(() => {
      const listing = device.list.getListing();
      const last = listing.state === "read" ? listing.entries.find((entry) => !entry.archived) : undefined;
      location.replace(jobAddress(last?.jobId ?? demoId));
    });
  }, [place.at, device]);
  return (
    <Suspense>
      <UpdateBar />
      {place.at === "job" && (
        <JobPage
          key={place.jobId}
          device={device}
          jobId={place.jobId}
          theme={theme}
          chooseTheme={chooseTheme}
        />
      )}
      {place.at === "jobs" && <JobListPage device={device} />}
      {place.at === "new" && <NewJob device={device} cancel={() => go("#/jobs")} />}
    </Suspense>
  );
}
