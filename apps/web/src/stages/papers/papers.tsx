import type { PackFile, PackOfJob } from "@pintle/papers";
import { wrap } from "comlink";
import { useEffect, useRef, useState } from "react";
import { handOver } from "../../jobs/job-files.ts";
import { text } from "../../strings/text.ts";
import type { Papers } from "../../worker/papers-worker.ts";
import type { Bench } from "../placement/bench.ts";

type Making =
  | { readonly state: "idle" | "working" }
  | { readonly state: "made"; readonly pack: PackOfJob; readonly of: unknown }
  | { readonly state: "failed"; readonly message: string };

/** The papers of the job: made here, in a worker, and handed over as files. */
export function PapersTab({ bench }: { readonly bench: Bench }) {
  const { job } = bench;
  const [making, setMaking] = useState<Making>({ state: "idle" });
  const [fromOtherSide, setFromOtherSide] = useState(false);
  const worker = useRef<Worker | null>(null);
  useEffect(() => () => worker.current?.terminate(), []);
  const make = async () => {
    worker.current?.terminate();
    const started = new Worker(new URL("../../worker/papers-worker.ts", import.meta.url), { type: "module" });
    worker.current = started;
    setMaking({ state: "working" });
    try {
      const pack = await wrap<Papers>(started).pack(job, Date.now(), fromOtherSide);
      setMaking({ state: "made", pack, of: job });
    } catch (error) {
      setMaking({ state: "failed", message: error instanceof Error ? error.message : String(error) });
    } finally {
      started.terminate();
    }
  };
  const isOld = making.state === "made" && making.of !== job;
  return (
    <section className="papers" aria-label={text("papers.heading")}>
      <h3>{text("papers.heading")}</h3>
      <p className="quiet">{text("papers.intro")}</p>
      <label className="tick">
        <input
          type="checkbox"
          checked={fromOtherSide}
          onChange={(event) => setFromOtherSide(event.target.checked)}
        />
        {text("papers.otherSide")}
      </label>
      <button
        type="button"
        className="strong"
        disabled={making.state === "working"}
        onClick={() => void make()}
      >
        {text(making.state === "working" ? "papers.working" : "papers.make")}
      </button>
      {making.state === "failed" && (
        <p className="fault" role="alert">
          {text("papers.failed", { message: making.message })}
        </p>
      )}
      {making.state === "made" && (
        <div role="status">
          {isOld && <p className="assumed">{text("papers.old")}</p>}
          {making.pack.notes.map((note) => (
            <p key={note} className="quiet">
              {note}
            </p>
          ))}
          <ul>
            {making.pack.files.map((file) => (
              <li key={file.name}>
                <button type="button" onClick={() => handOver(blobOf(file), file.name)}>
                  {file.name} <span className="quiet">{kilobytes(file.bytes.length)}</span>
                </button>
              </li>
            ))}
          </ul>
        </div>
      )}
      <p className="caution">{text("papers.caution")}</p>
    </section>
  );
}

const kinds: Readonly<Record<string, string>> = {
  pdf: "application/pdf",
  svg: "image/svg+xml",
  dxf: "image/vnd.dxf",
};

const blobOf = ({ name, bytes }: PackFile): Blob =>
  new Blob([new Uint8Array(bytes)], {
    type: kinds[name.split(".").at(-1) ?? ""] ?? "application/octet-stream",
  });

const kilobytes = (bytes: number): string =>
  new Intl.NumberFormat(undefined, { style: "unit", unit: "kilobyte", maximumFractionDigits: 0 }).format(
    bytes / 1000,
  );
