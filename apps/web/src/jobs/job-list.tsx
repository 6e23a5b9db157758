import type { JobEntry } from "@pintle/store";
import { useCallback, useEffect, useRef, useState } from "react";
import { text } from "../strings/text.ts";
import { demoId } from "./demo.ts";
import type { Device } from "./device.ts";
import { takeIn } from "./job-files.ts";
import { go, jobAddress } from "./place.ts";
import { titleOf } from "./use-job.ts";

/** Every job on this device: open, duplicate, archive; take in a file; start a new one. */
export function JobList({ device }: { readonly device: Device }) {
  const [entries, setEntries] = useState<readonly JobEntry[] | null>(null);
  const [faults, setFaults] = useState<readonly string[]>([]);
  const file = useRef<HTMLInputElement>(null);
  const refresh = useCallback(async () => {
    const listed = await device.storage.list();
    if (listed.ok) setEntries(listed.entries);
    else setFaults([listed.message]);
  }, [device]);
  useEffect(() => {
    document.title = `${text("jobs.heading")} – ${text("app.name")}`;
    void refresh();
  }, [refresh]);

  const start = async (job: Parameters<Device["start"]>[0]) => {
    const started = await device.start(job);
    if (!started.ok) return setFaults([started.message]);
    const { jobId } = started.kept;
    await started.kept.close();
    return jobId;
  };
  const importFile = async (chosen: File | undefined) => {
    if (chosen === undefined) return;
    const taken = await takeIn(chosen);
    if (!taken.ok) return setFaults(taken.lines);
    const jobId = await start(taken.job);
    if (jobId !== undefined) go(jobAddress(jobId));
  };
  const duplicate = async (entry: JobEntry) => {
    const opened = await device.open(entry.jobId);
    if (!opened.ok) return setFaults([opened.message]);
    const job = opened.kept.live.getJob();
    await opened.kept.close();
    if (job !== undefined) await start({ ...job, title: text("jobs.copyOf", { title: titleOf(job.title) }) });
    await refresh();
  };
  const setArchived = async (entry: JobEntry, archived: boolean) => {
    await device.storage.setArchived(entry.jobId, archived);
    await refresh();
  };
  const rows = (archived: boolean) =>
    (entries ?? [])
      .filter((entry) => entry.archived === archived)
      .map((entry) => (
        <li key={entry.jobId}>
          <a href={jobAddress(entry.jobId)}>{titleOf(entry.title)}</a>
          <span className="quiet">{text("jobs.changed", { when: when(entry.updatedAtMs) })}</span>
          <button type="button" onClick={() => void duplicate(entry)}>
            {text("jobs.duplicate")}
          </button>
          <button type="button" onClick={() => void setArchived(entry, !archived)}>
            {text(archived ? "jobs.restore" : "jobs.archive")}
          </button>
        </li>
      ));
  const archived = rows(true);
  return (
    <main className="page">
      <h1>{text("jobs.heading")}</h1>
      <p className="actions">
        <a className="button strong" href="#/new">
          {text("jobs.new")}
        </a>
        <button type="button" onClick={() => file.current?.click()}>
          {text("jobs.import")}
        </button>
        <a className="button" href={jobAddress(demoId)}>
          {text("jobs.demo")}
        </a>
        <input
          ref={file}
          className="unseen"
          type="file"
          tabIndex={-1}
          accept=".json,application/json"
          aria-label={text("jobs.import")}
          onChange={(event) => {
            void importFile(event.target.files?.[0]);
            event.target.value = "";
          }}
        />
      </p>
      {faults.length > 0 && (
        <div className="fault" role="alert">
          <p>{text("jobs.refused")}</p>
          <ul>
            {faults.map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ul>
        </div>
      )}
      <ul className="job-list">{rows(false)}</ul>
      {entries?.length === 0 && <p className="quiet">{text("jobs.none")}</p>}
      {archived.length > 0 && (
        <>
          <h2>{text("jobs.archived")}</h2>
          <ul className="job-list">{archived}</ul>
        </>
      )}
    </main>
  );
}

const when = (ms: number): string =>
  new Intl.DateTimeFormat(undefined, { dateStyle: "medium", timeStyle: "short" }).format(ms);
