import { displayUnit, draftJob, fromSi, type Job, judgeDocument, parseQuantity } from "@pintle/job";
import { type FormEvent, useState } from "react";
import { text } from "../strings/text.ts";
import { demoJob } from "./demo.ts";
import type { Device } from "./device.ts";
import { HingePicture, SwingPicture } from "./gate-pictures.tsx";
import { go, jobAddress } from "./place.ts";

const usual = { metric: { length: "3200", thickness: "50" }, us: { length: "10' 6\"", thickness: "2" } };

/** Six questions with pictures, then the drawing. What is not asked starts as assumed and says so. */
export function NewJob({ device, cancel }: { readonly device: Device; readonly cancel: () => void }) {
  const [display, setDisplay] = useState<"metric" | "us">(() =>
    navigator.language.endsWith("-US") ? "us" : "metric",
  );
  const [faults, setFaults] = useState<readonly string[]>([]);
  const unit = displayUnit("length", display);
  const submit = async (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const form = new FormData(event.currentTarget);
    const answer = (name: string) => String(form.get(name) ?? "");
    const wrong: string[] = [];
    const amount = (name: "length" | "thickness" | "angle") => {
      const isAngle = name === "angle";
      const read = parseQuantity(isAngle ? "angle" : "length", answer(name), isAngle ? "deg" : unit);
      if (read.ok) return fromSi(read.si, isAngle ? "deg" : "mm");
      wrong.push(`${text(`new.${name}`)} ${text("dimension.expected", { expected: read.expected })}`);
      return Number.NaN;
    };
    const [lengthMm, thicknessMm, openAngleDeg] = [amount("length"), amount("thickness"), amount("angle")];
    if (wrong.length > 0) return setFaults(wrong);
    const job: Job = draftJob({
      title: answer("title").trim(),
      display,
      hingeSide: answer("hinge") === "right" ? "right" : "left",
      swing: answer("swing") === "away" ? "away" : "toward",
      lengthMm,
      thicknessMm,
      openAngleDeg,
      rams: structuredClone(demoJob().rams ?? []),
    });
    const judged = judgeDocument(job);
    if (!judged.ok) return setFaults(judged.faults.map((fault) => `${fault.path}: ${fault.expected}`));
    const added = await device.list.add(job);
    if (added.ok) go(jobAddress(added.jobId));
    else setFaults([added.message]);
  };
  return (
    <main className="page">
      <h1>{text("new.heading")}</h1>
      <form className="questions" onSubmit={(event) => void submit(event)}>
        <label>
          <span className="asked">1. {text("new.title")}</span>
          <input name="title" autoComplete="off" maxLength={120} />
        </label>
        <fieldset>
          <legend>2. {text("new.hinge")}</legend>
          <div className="pictures">
            {(["left", "right"] as const).map((side) => (
              <label key={side} className="picture">
                <HingePicture side={side} />
                <span>
                  <input type="radio" name="hinge" value={side} defaultChecked={side === "left"} />{" "}
                  {text(`new.hinge.${side}`)}
                </span>
              </label>
            ))}
          </div>
        </fieldset>
        <fieldset>
          <legend>3. {text("new.swing")}</legend>
          <div className="pictures">
            {(["toward", "away"] as const).map((swing) => (
              <label key={swing} className="picture">
                <SwingPicture swing={swing} />
                <span>
                  <input type="radio" name="swing" value={swing} defaultChecked={swing === "toward"} />{" "}
                  {text(`new.swing.${swing}`)}
                </span>
              </label>
            ))}
          </div>
        </fieldset>
        <fieldset className="pictures">
          <legend className="unseen">{text("app.units")}</legend>
          {(["metric", "us"] as const).map((units) => (
            <label key={units} className="tick">
              <input
                type="radio"
                name="display"
                value={units}
                checked={display === units}
                onChange={() => setDisplay(units)}
              />
              {text(`app.${units}`)}
            </label>
          ))}
        </fieldset>
        {(["length", "thickness"] as const).map((name, index) => (
          <label key={`${name} ${display}`}>
            <span className="asked">
              {index + 4}. {text(`new.${name}`)}
            </span>
            <input name={name} autoComplete="off" defaultValue={usual[display][name]} />{" "}
            <span className="quiet">{unit}</span>
          </label>
        ))}
        <label>
          <span className="asked">6. {text("new.angle")}</span>
          <input name="angle" autoComplete="off" defaultValue="90" inputMode="decimal" />{" "}
          <span className="quiet">°</span>
        </label>
        <p className="quiet">{text("new.assumedNote")}</p>
        {faults.length > 0 && (
          <ul className="fault" role="alert">
            {faults.map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ul>
        )}
        <div className="actions">
          <button type="submit" className="strong">
            {text("new.draw")}
          </button>
          <button type="button" onClick={cancel}>
            {text("new.cancel")}
          </button>
        </div>
      </form>
    </main>
  );
}
