import type { Limit } from "@pintle/core";
import { limitFindings, valueOrigins } from "@pintle/job";
import { english } from "../../strings/english.ts";
import { type Phrase, text } from "../../strings/text.ts";
import type { Bench } from "./bench.ts";
import { originWords, valueName, valueWords } from "./value-words.ts";

/** Where a limit's number comes from: the formula, the source of the limit, and every value that goes in. */
export function LimitOrigin({ bench, limit }: { readonly bench: Bench; readonly limit: Limit }) {
  const { job, leafIndex, display } = bench;
  const { id } = limit;
  const [finding] = limitFindings(job, leafIndex, [limit]);
  const used = valueOrigins(job).filter(({ path }) => goesInto(id, path, leafIndex, ramPath(bench)));
  return (
    <div className="origin">
      {finding !== undefined && <p>{finding.text}.</p>}
      <p>{text(formulaOf(id))}</p>
      {finding !== undefined && <p>{text("values.source", { source: finding.source })}</p>}
      <p>{text("values.used")}</p>
      <ul>
        {used.map((value) => (
          <li key={value.path}>
            <span>{valueName(value.path, job)}</span> <b>{valueWords(value, display)}</b>{" "}
            <em className={value.standing === "assumed" ? "assumed" : ""}>{originWords(value)}</em>
          </li>
        ))}
      </ul>
    </div>
  );
}

function formulaOf(id: string): Phrase {
  const phrase = `origin.${id}`;
  if (phrase in english) return phrase as Phrase;
  return id.startsWith("sweep.") ? "origin.sweep" : "origin.clearance";
}

function ramPath({ job, ram }: Bench): string {
  return `rams[${(job.rams ?? []).findIndex((one) => one.id === ram?.id)}]`;
}

/** Which values a limit is worked out from (rule G10). */
function goesInto(id: string, path: string, leafIndex: number, ram: string): boolean {
  const leaf = `leaves[${leafIndex}].`;
  const inLeaf = (...keys: string[]) => keys.some((key) => path.startsWith(leaf + key));
  const inRam = (...keys: string[]) => keys.some((key) => path.startsWith(`${ram}.${key}`));
  const pins = inLeaf("placement", "openAngleDeg");
  if (id === "stroke.retracted") return pins || inRam("retracted");
  if (id === "stroke.extended") return pins || inRam("retractedMm", "stroke", "extendedMargin");
  if (id === "lever") return pins || inLeaf("need.leverMm");
  if (id === "deadCentre") return pins || inLeaf("need.deadCentreDeg");
  if (id.startsWith("sweep.")) {
    return inLeaf(
      "lengthMm",
      "heelMm",
      "thicknessMm",
      "faceMm",
      "boxes",
      "openAngleDeg",
      "fixed",
      "need.sweepMm",
    );
  }
  const body = inRam("tube", "rodHalfWidth");
  if (id === "clearance.leaf") {
    return pins || body || inLeaf("heelMm", "lengthMm", "thicknessMm", "faceMm", "boxes", "need.clearanceMm");
  }
  return pins || body || inLeaf("fixed", "need.fixedClearanceMm");
}
