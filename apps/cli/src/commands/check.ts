import type { Command } from "commander";
import { checkMany } from "../batch/check-many.ts";
import { type ExitCode, exitCode } from "../exit-code.ts";
import { jobPaths } from "../input/job-paths.ts";
import type { Outside } from "../outside.ts";
import { checkText } from "../reporters/text/check.ts";
import { wholeNumber } from "./number-option.ts";
import { type ReportOptions, reportOn } from "./with-job.ts";

type CheckOptions = ReportOptions & { readonly workers?: number };

export function addCheck(program: Command, outside: Outside, end: (code: ExitCode) => void): void {
  program
    .command("check")
    .summary("judge jobs against every limit")
    .description("Judge one job in full, or many in a line each: several files, or a folder of .json files.")
    .argument("<jobs...>", "job files or folders, or - for standard input")
    .option("--plan", "draw the plan (one job)")
    .option(
      "--workers <count>",
      "how many workers judge many jobs (all cores unless given)",
      wholeNumber(1, 64),
    )
    .option("--json", "print one JSON document")
    .action(async (given: string[], options: CheckOptions) => {
      end(await check(given, options, outside));
    });
}

async function check(given: readonly string[], options: CheckOptions, outside: Outside): Promise<ExitCode> {
  if (given.length > 1 && given.includes("-")) {
    outside.tell(["standard input (-) stands alone; found it among several jobs"]);
    return exitCode.badInput;
  }
  const paths = await jobPaths(given);
  if (paths.length === 0) {
    outside.tell([`${given.join(", ")}: found no .json file, expected at least one job`]);
    return exitCode.badInput;
  }
  const [only] = paths;
  // A folder that holds one job is still a folder: its document has the shape for many.
  if (given.length > 1 || only === undefined || only !== given[0]) return checkMany(paths, options, outside);
  return reportOn(only, options, outside, {
    solve: outside.operations.check,
    text: checkText,
    exit: ({ findings }) =>
      findings.some(({ state }) => state === "fail") ? exitCode.limitFails : exitCode.nothingFails,
  });
}
