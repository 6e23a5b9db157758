import type { Command } from "commander";
import { type ExitCode, exitCode } from "../exit-code.ts";
import type { Outside } from "../outside.ts";
import { asBuiltText } from "../reporters/text/as-built.ts";
import { type ReportOptions, reportOn } from "./with-job.ts";

export function addAsBuilt(program: Command, outside: Outside, end: (code: ExitCode) => void): void {
  program
    .command("asbuilt")
    .summary("find where the pins really are, from tape readings")
    .description(
      "Estimate the pins from the tape readings in the job, name a reading that was likely misread, and judge the gate as it is.",
    )
    .argument("<job>", "job file, or - for standard input")
    .option("--plan", "draw the plan")
    .option("--json", "print one JSON document")
    .action(async (path: string, options: ReportOptions) => {
      end(
        await reportOn(path, options, outside, {
          solve: outside.operations.asBuilt,
          text: asBuiltText,
          exit: ({ leaves }) => {
            // Readings that settle no leaf's pins are too few to say anything.
            if (leaves.every(({ pins }) => pins === null)) return exitCode.badInput;
            const fails = leaves.some(({ limits }) => limits.some(({ state }) => state === "fail"));
            return fails ? exitCode.limitFails : exitCode.nothingFails;
          },
        }),
      );
    });
}
