import { faultLines } from "@pintle/job";
import type { JobEntry } from "@pintle/store";
import { useEffect, useRef, useState, useSyncExternalStore } from "react";
import { text } from "../strings/text.ts";
import { demoId } from "./demo.ts";
import type { Device } from "./device.ts";
import { handOver } from "./job-files.ts";
import { go, jobAddress } from "./place.ts";
import { titleOf } from "./use-job.ts";

/** Every job on this device: open, duplicate, archive; take in files; hand over all; start a new one. */
export function JobListPage({ device }: { readonly device: Device }) {
  const { list } = device;
  const listing = useSyncExternalStore(list.subscribe, list.getListing);
  const [faults, setFaults] = useState<readonly string[]>([]);
  const file = useRef<HTMLInputElement>(null);
  useEffect(() => {
    document.title = `${text("jobs.heading")} – ${text("app.name")}`;
    void list.refresh();
  }, [list]);

  const importFiles = async (chosen: readonly File[]) => {
    if (chosen.length === 0) return;
    const files = await Promise.all(
      chosen.map(async (one) => ({ name: one.name, bytes: new Uint8Array(await one.arrayBuffer()) })),
    );
    const imported = await list.importFiles(files);
    if (imported.ok) {
      setFaults([]);
      const [first] = imported.jobIds;
      if (imported.jobIds.length === 1 && first !== undefined) go(jobAddress(first));
    } else if (imported.reason === "faults") {
      setFaults(
        imported.faulty.flatMap((one) => faultLines(one.faults, 10).map((line) => `${one.file}: ${line}`)),
      );
    } else setFaults([imported.message]);
  };
  const exportAll = async () => {
    const all = await list.exportAll();
    if (!all.ok) return setFaults([all.message]);
    handOver(new Blob([new Uint8Array(all.bytes)], { type: "application/zip" }), "gate-jobs.zip");
  };
  const entries = listing.state === "read" ? listing.entries : [];
  const duplicate = async (entry: JobEntry) => {
    const added = await list.duplicate(entry.jobId, text("jobs.copyOf", { title: titleOf(entry.title) }));
    if (!added.ok) setFaults([added.message]);
  };
  const setArchived = async (entry: JobEntry, archived: boolean) => {
    const kept = await list.setArchived(entry.jobId, archived);
    if (!kept.ok) setFaults([kept.message]);
  };
  const rows = (archived: boolean) =>
    entries
      .filter((entry) => entry.archived === archived)
      .map((entry) => (
        <li key={entry.jobId}>
          <a href={jobAddress(entry.jobId)}>{titleOf(entry.title)}</a>
          <span className="quiet">{text("jobs.changed", { when: when(entry.updatedAtMs) })}</span>
          <button
            type="button"
            aria-label={`${text("jobs.duplicate")}: ${titleOf(entry.title)}`}
            onClick={() => void duplicate(entry)}
          >
            {text("jobs.duplicate")}
          </button>
          <button
            type="button"
            aria-label={`${text(archived ? "jobs.restore" : "jobs.archive")}: ${titleOf(entry.title)}`}
            onClick={() => void setArchived(entry, !archived)}
          >
            {text(archived ? "jobs.restore" : "jobs.archive")}
          </button>
        </li>
      ));
  const archived = rows(true);
  return (
    <main className="page">
      <h1>{text("jobs.heading")}</h1>
      <div className="actions">
        <a className="button strong" href="#/new">
          {text("jobs.new")}
        </a>
        <button type="button" onClick={() => file.current?.click()}>
          {text("jobs.import")}
        </button>
        <button type="button" onClick={() => void exportAll()}>
          {text("jobs.exportAll")}
        </button>
        <a className="button" href={jobAddress(demoId)}>
          {text("jobs.demo")}
        </a>
        <input
          ref={file}
          className="unseen"
          type="file"
          multiple
          tabIndex={-1}
          accept=".json,.zip,application/json,application/zip"
          aria-label={text("jobs.import")}
          onChange={(event) => {
            void importFiles([...(event.target.files ?? [])]);
            event.target.value = "";
          }}
        />
      </div>
      {device.keepsNothing !== null && (
        <p className="fault" role="alert">
          {text("app.keepsNothing", { message: device.keepsNothing })}
        </p>
      )}
      {listing.state === "failed" && (
        <p className="fault" role="alert">
          {listing.message}
        </p>
      )}
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
      {listing.state === "read" && entries.length === 0 && <p className="quiet">{text("jobs.none")}</p>}
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
