import type { JudgedFile } from "../../batch/judged-file.ts";
import { cleanText, shortCleanText } from "../../output/clean-text.ts";
import { batchCounts } from "../json/batch.ts";
import type { Style } from "./style.ts";

/** A line a job in the order given, then the sum. */
export function batchText(judged: readonly JudgedFile[], style: Style): string[] {
  const widest = judged.reduce((most, { file }) => Math.max(most, Math.min(60, cleanText(file).length)), 0);
  const counts = batchCounts(judged);
  return [
    ...judged.map((one) => line(one, widest, style)),
    "",
    `${counts.jobs} jobs: ${counts.nothingFails} with nothing that fails${withoutPins(judged)}, ${counts.limitFails} with a limit that fails, ${counts.badInput} that cannot be read`,
  ];
}

function line(judged: JudgedFile, widest: number, style: Style): string {
  const file = cleanText(judged.file).padEnd(widest);
  if (!judged.ok) {
    const count = judged.faults.length;
    return style.bad(`${file}  cannot be read: ${count} ${count === 1 ? "fault" : "faults"}`);
  }
  const { fail, notChecked, unplaced } = judged;
  // A leaf without pins has nothing that could hold.
  const said = fail > 0 ? style.bad(`FAILS ${fail}`) : unplaced > 0 ? style.bad("no pins") : "holds  ";
  return `${file}  ${said}  ${notChecked} not checked  ${shortCleanText(judged.title, 50)}`.trimEnd();
}

function withoutPins(judged: readonly JudgedFile[]): string {
  const count = judged.filter((one) => one.ok && one.fail === 0 && one.unplaced > 0).length;
  return count === 0 ? "" : ` (${count} of them without pins yet)`;
}
