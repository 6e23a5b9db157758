import type { Command } from "commander";
import { type ExitCode, exitCode } from "../exit-code.ts";
import { loadJob } from "../input/load-job.ts";
import type { Outside } from "../outside.ts";
import { firstLook } from "../reporters/text/first-look.ts";
import { pageFor, refuse } from "./with-job.ts";

/** What `npm start` shows; not in the help, since it is made for the demo job. */
export function addFirstLook(program: Command, outside: Outside, end: (code: ExitCode) => void): void {
  program
    .command("first-look", { hidden: true })
    .summary("show a job on one screen")
    .argument("<job>", "job file")
    .action(async (path: string) => {
      const loaded = await loadJob(path);
      if (!loaded.ok) return end(refuse(loaded, {}, outside));
      const { job } = loaded;
      const { check, place } = outside.operations;
      const lines = firstLook(job, check(job), place(job, { best: 1 }), pageFor(path, {}, outside));
      outside.print(`${lines.join("\n")}\n`);
      end(exitCode.nothingFails);
    });
}
