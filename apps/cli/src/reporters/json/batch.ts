import { exitCodeOf, type JudgedFile } from "../../batch/judged-file.ts";
import { exitCode } from "../../exit-code.ts";

/** Many jobs as one document: each file's findings or faults in the order given, and the counts. */
export function batchDocument(judged: readonly JudgedFile[]) {
  return {
    jobs: judged.map((one) =>
      one.ok ? { file: one.file, ...one.document } : { file: one.file, faults: one.faults },
    ),
    summary: batchCounts(judged),
  };
}

export function batchCounts(judged: readonly JudgedFile[]) {
  const count = (code: number) => judged.filter((one) => exitCodeOf(one) === code).length;
  return {
    jobs: judged.length,
    nothingFails: count(exitCode.nothingFails),
    limitFails: count(exitCode.limitFails),
    badInput: count(exitCode.badInput),
  };
}
