import type { Command } from "commander";
import { type ExitCode, exitCode } from "../exit-code.ts";
import type { Outside } from "../outside.ts";
import { swingText } from "../reporters/text/swing.ts";
import { positiveNumber } from "./number-option.ts";
import { type ReportOptions, reportOn } from "./with-job.ts";

export function addSwing(program: Command, outside: Outside, end: (code: ExitCode) => void): void {
  program
    .command("swing")
    .summary("follow the ram over the travel")
    .description(
      "Pin-to-pin length, lever arm and clearance at every angle of the travel, for the pins in the job.",
    )
    .argument("<job>", "job file, or - for standard input")
    .option("--step-deg <degrees>", "spacing of the angles", positiveNumber(90), 5)
    .option("--json", "print one JSON document")
    .action(async (path: string, options: ReportOptions & { stepDeg: number }) => {
      end(
        await reportOn(path, options, outside, {
          solve: (job) => outside.operations.swing(job, { stepDeg: options.stepDeg }),
          text: swingText,
          // A job without any pins to follow lacks what this command is for.
          exit: ({ leaves }) => (leaves.length > 0 ? exitCode.nothingFails : exitCode.badInput),
        }),
      );
    });
}
