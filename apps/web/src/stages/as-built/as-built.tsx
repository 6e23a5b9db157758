import { asBuiltJob, displayUnit, fromSi, type JobReading, parseQuantity } from "@pintle/job";
import { type FormEvent, useMemo, useState } from "react";
import { text } from "../../strings/text.ts";
import type { Bench } from "../placement/bench.ts";
import { shownMm } from "../placement/shown.ts";
import { pinsTaken } from "../placement/take-pins.ts";
import { readingKinds, readingName } from "./reading-kinds.ts";

/** Tape readings of what is drilled: where the pins really are, what was likely misread, and the smallest mend. */
export function AsBuilt({ bench }: { readonly bench: Bench }) {
  const { job, leaf, leafIndex, display, change } = bench;
  const readings = leaf.asBuilt?.readings ?? [];
  const built = useMemo(() => asBuiltJob(job).leaves[leafIndex], [job, leafIndex]);
  const at = ["leaves", leafIndex, "asBuilt"] as const;
  const setReadings = (next: readonly JobReading[], label: string) =>
    leaf.asBuilt === undefined
      ? change([{ path: at, value: { readings: next } }], label)
      : change([{ path: [...at, "readings"], value: next }], label);
  return (
    <section className="as-built" aria-label={text("built.heading")}>
      <h3>{text("built.heading")}</h3>
      <p className="quiet">{text("built.intro")}</p>
      <AddReading
        bench={bench}
        add={(reading) => setReadings([...readings, reading], text("edit.reading"))}
      />
      {readings.length === 0 && <p>{text("built.none")}</p>}
      <ol className="readings">
        {readings.map((reading, index) => {
          const path = `asBuilt.readings[${index}]`;
          const residual = built?.residuals.find((one) => one.path === path);
          const isSuspect = built?.misread.includes(path) ?? false;
          return (
            // biome-ignore lint/suspicious/noArrayIndexKey: readings are told apart by their place in the list
            <li key={index} className={isSuspect ? "fails" : ""}>
              <span>{readingName(reading)}</span>
              <b>{shownMm(reading.valueMm, display)}</b>
              <em className="quiet">
                {residual !== undefined &&
                  text("built.off", {
                    amount: shownMm(Math.abs(residual.valueMm - residual.predictedMm), display),
                  })}
                {isSuspect && <strong className="assumed"> {text("built.misread")}</strong>}
              </em>
              <button
                type="button"
                className="plain"
                aria-label={text("built.remove", { name: readingName(reading) })}
                onClick={() => setReadings(readings.toSpliced(index, 1), text("edit.removeReading"))}
              >
                ×
              </button>
            </li>
          );
        })}
      </ol>
      {readings.length > 0 && (
        <>
          <label className="tick">
            <input
              type="checkbox"
              checked={leaf.asBuilt?.estimateOpenAngle ?? false}
              onChange={(event) =>
                change(
                  [{ path: [...at, "estimateOpenAngle"], value: event.target.checked }],
                  text("edit.built"),
                )
              }
            />
            {text("built.estimateAngle")}
          </label>
          <ul className="built-lines" aria-live="polite">
            {built?.lines.map((line) => (
              <li key={line}>{line}</li>
            ))}
            {built?.reserveText && <li>{withCapital(built.reserveText)}.</li>}
          </ul>
          {built?.mends.map((mend) => (
            <button
              key={mend.pin}
              type="button"
              onClick={() => change(pinsTaken(job, leafIndex, mend.pins), text("edit.mend"))}
            >
              {text("built.apply", {
                pin: text(mend.pin === "postPin" ? "built.postPin" : "built.leafPin"),
                distance: shownMm(mend.distanceMm, display),
              })}
            </button>
          ))}
        </>
      )}
    </section>
  );
}

/** What was measured, what the tape said, one button. */
function AddReading(props: { readonly bench: Bench; readonly add: (reading: JobReading) => void }) {
  const { bench, add } = props;
  const kinds = readingKinds(bench.leaf);
  const [kindId, setKindId] = useState("pinToPinClosed");
  const [written, setWritten] = useState("");
  const [fault, setFault] = useState<string | null>(null);
  const unit = displayUnit("length", bench.display);
  const submit = (event: FormEvent) => {
    event.preventDefault();
    const kind = kinds.find((one) => one.id === kindId) ?? kinds[0];
    const read = parseQuantity("length", written, unit);
    if (!read.ok || kind === undefined) {
      return setFault(text("dimension.expected", { expected: read.ok ? "" : read.expected }));
    }
    add(kind.reading(fromSi(read.si, "mm")));
    setWritten("");
    setFault(null);
  };
  return (
    <form className="add-reading" onSubmit={submit}>
      <label>
        <span>{text("built.kind")}</span>
        <select value={kindId} onChange={(event) => setKindId(event.target.value)}>
          {kinds.map((kind) => (
            <option key={kind.id} value={kind.id}>
              {kind.name}
            </option>
          ))}
        </select>
      </label>
      <label>
        <span>
          {text("built.value")} ({unit})
        </span>
        <input
          value={written}
          autoComplete="off"
          inputMode={bench.display === "us" ? "text" : "decimal"}
          aria-invalid={fault !== null}
          onChange={(event) => setWritten(event.target.value)}
        />
      </label>
      <button type="submit" className="strong">
        {text("built.add")}
      </button>
      {fault !== null && (
        <p className="fault" role="alert">
          {fault}
        </p>
      )}
    </form>
  );
}

const withCapital = (words: string) => words.charAt(0).toUpperCase() + words.slice(1);
