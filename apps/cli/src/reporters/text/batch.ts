import type { JudgedFile } from "../../batch/judged-file.ts";
import { cleanText, shortCleanText } from "../../output/clean-text.ts";
import { batchCounts } from "../json/batch.ts";
import type { Style } from "./style.ts";

/** A line a job in the order given, then the sum. */
export function batchText(judged: readonly JudgedFile[], style: Style): string[] {
  const widest = Math.min(60, Math.max(...judged.map(({ file }) => cleanText(file).length)));
  const counts = batchCounts(judged);
  return [
    ...judged.map((one) => line(one, widest, style)),
    "",
    `${counts.jobs} jobs: ${counts.nothingFails} with nothing that fails, ${counts.limitFails} with a limit that fails, ${counts.badInput} that cannot be read`,
  ];
}

function line(judged: JudgedFile, widest: number, style: Style): string {
  const file = cleanText(judged.file).padEnd(widest);
  if (!judged.ok) {
    const count = judged.faults.length;
    return style.bad(`${file}  cannot be read: ${count} ${count === 1 ? "fault" : "faults"}`);
  }
  const { findings } = judged.document;
  const failing = findings.filter(({ state }) => state === "fail");
  const open = findings.filter(({ state }) => state === "not-checked").length;
  const said = failing.length > 0 ? style.bad(`FAILS ${failing.length}`) : "holds  ";
  return `${file}  ${said}  ${open} not checked  ${shortCleanText(judged.title, 50)}`.trimEnd();
}
