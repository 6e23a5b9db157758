import { writeJob } from "@pintle/job";
import { type Command, Option } from "commander";
import type { ExitCode } from "../exit-code.ts";
import { loadJob } from "../input/load-job.ts";
import { printOrWrite, type TargetOptions } from "../output/print-or-write.ts";
import type { Outside } from "../outside.ts";
import { refuse, tellNotes } from "./with-job.ts";

type ConvertOptions = TargetOptions & { readonly display?: "metric" | "us" };

export function addConvert(program: Command, outside: Outside, end: (code: ExitCode) => void): void {
  program
    .command("convert")
    .summary("bring a job up to this version, or to other units")
    .description(
      "Read a job of any version that can be read and write it as this version does; values stay as they are.",
    )
    .argument("<job>", "job file, or - for standard input")
    .addOption(
      new Option("--display <units>", "the units that people type and read").choices(["metric", "us"]),
    )
    .option("--out <file>", "write to a file instead of standard output")
    .option("--force", "replace the file if it is there")
    .action(async (path: string, options: ConvertOptions) => {
      const loaded = await loadJob(path);
      if (!loaded.ok) return end(refuse(loaded, {}, outside));
      tellNotes(loaded, outside);
      const job = options.display === undefined ? loaded.job : { ...loaded.job, display: options.display };
      end(await printOrWrite(writeJob(job), options, outside));
    });
}
