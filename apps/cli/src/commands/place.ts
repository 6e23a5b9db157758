import type { Command } from "commander";
import { type ExitCode, exitCode } from "../exit-code.ts";
import type { Outside } from "../outside.ts";
import { placeText } from "../reporters/text/place.ts";
import { wholeNumber } from "./number-option.ts";
import { type ReportOptions, reportOn } from "./with-job.ts";

export function addPlace(program: Command, outside: Outside, end: (code: ExitCode) => void): void {
  program
    .command("place")
    .summary("find where the ram's two pins go")
    .description(
      "Find, for every leaf of a job, the pins with the largest reserve: the error that every pin may have with all limits still kept.",
    )
    .argument("<job>", "job file, or - for standard input")
    .option("--best <count>", "how many placements that differ in kind to show", wholeNumber(1, 20), 3)
    .option("--no-plan", "leave out the drawing")
    .option("--json", "print one JSON document")
    .action(async (path: string, options: ReportOptions & { best: number }) => {
      end(
        await reportOn(path, options, outside, {
          solve: (job) => outside.operations.place(job, { best: options.best }),
          text: placeText,
          exit: ({ leaves }) =>
            leaves.every(({ placements }) => (placements[0]?.reserveMm ?? -1) >= 0)
              ? exitCode.nothingFails
              : exitCode.limitFails,
        }),
      );
    });
}
