import { type Job, pinErrorText, reserveText } from "@pintle/job";
import { Fragment, useDeferredValue } from "react";
import { text } from "../../strings/text.ts";
import type { Bench } from "./bench.ts";

/** One sentence carries the verdict; what goes first and which way stands below it. */
export function Verdict({ bench }: { readonly bench: Bench }) {
  const { gate, display, job, leafIndex } = bench;
  if (gate === null) return <p className="verdict quiet">{whyNotJudged(job, leafIndex)}</p>;
  const [sentence = "", ...rest] = reserveText(gate.reserve, display).split("; ");
  const direction = gate.reserve.firstToBreak?.direction ?? null;
  const way = direction === null ? "" : pinErrorText(direction);
  return (
    <div className={gate.reserve.feasible ? "verdict" : "verdict fails"}>
      <h2>
        <Emphasised sentence={`${withCapital(sentence)}.`} />
      </h2>
      <p>
        {rest.map((part) => `${withCapital(part)}. `)}
        {way !== "" && text("verdict.direction", { direction: way })}
      </p>
      <Spoken words={`${withCapital(sentence)}. ${rest.join(". ")}`} />
    </div>
  );
}

/** The amount in the sentence stands out; the words are the job package's own. */
function Emphasised({ sentence }: { readonly sentence: string }) {
  const amount = /\d[\d\s'./,]*(?:mm|"|%)/.exec(sentence)?.[0];
  if (amount === undefined) return sentence;
  const [before, after] = sentence.split(amount);
  return (
    <Fragment>
      {before}
      <strong>{amount}</strong>
      {after}
    </Fragment>
  );
}

/** Read aloud when it has settled, not at every frame of a drag. */
function Spoken({ words }: { readonly words: string }) {
  const settled = useDeferredValue(words);
  return (
    <p className="unseen" role="status">
      {settled}
    </p>
  );
}

function whyNotJudged(job: Job, leafIndex: number): string {
  const leaf = job.leaves[leafIndex];
  const why = [
    ...(leaf?.ram === undefined ? ["no ram is chosen"] : []),
    ...(leaf?.placement === undefined ? ["the pins have no place yet"] : []),
  ];
  return text("verdict.missing", { why: why.join(", ") });
}

const withCapital = (words: string) => words.charAt(0).toUpperCase() + words.slice(1);
