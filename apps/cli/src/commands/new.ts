import { type Display, writeJob } from "@pintle/job";
import { type Command, Option } from "commander";
import { type ExitCode, exitCode } from "../exit-code.ts";
import { askMissing, type Said } from "../new-job/ask-missing.ts";
import { draftJob } from "../new-job/draft-job.ts";
import { leafValues } from "../new-job/leaf-values.ts";
import { printOrWrite, type TargetOptions } from "../output/print-or-write.ts";
import type { Outside } from "../outside.ts";
import { faultText } from "../reporters/text/faults.ts";

type NewOptions = TargetOptions & { readonly title?: string; readonly units: Display };

export function addNew(program: Command, outside: Outside, end: (code: ExitCode) => void): void {
  const command = program
    .command("new")
    .summary("begin a job file")
    .description(
      "Write a new job with one leaf. What the options leave open is asked at a terminal, and assumed (and marked so in the file) elsewhere.",
    )
    .option("--title <text>", "title of the job")
    .addOption(
      new Option("--units <units>", "units that people type and read")
        .choices(["metric", "us"])
        .default("metric"),
    );
  for (const { option, about } of leafValues) command.option(`${option} <value>`, about);
  command
    .option("--out <file>", "write to a file instead of standard output")
    .option("--force", "replace the file if it is there")
    .action(async (options: NewOptions & Readonly<Record<string, string>>) => {
      end(await begin(options, outside));
    });
}

async function begin(
  options: NewOptions & Readonly<Record<string, string>>,
  outside: Outside,
): Promise<ExitCode> {
  const values: Record<string, string> = {};
  for (const { key, option } of leafValues) {
    const text = options[optionName(option)];
    if (text !== undefined) values[key] = text;
  }
  const given: Said = options.title === undefined ? { values } : { title: options.title, values };
  const said = await askIfSomebodyIsThere(given, options.units, outside);
  const draft = draftJob(said, options.units);
  if (!draft.ok) {
    outside.tell(faultText("new", draft.faults));
    return exitCode.badInput;
  }
  const code = await printOrWrite(writeJob(draft.job), options, outside);
  if (code === exitCode.nothingFails && draft.assumed.length > 0) {
    outside.tell([`assumed, to be measured: ${draft.assumed.join(", ")}`]);
  }
  return code;
}

async function askIfSomebodyIsThere(given: Said, units: Display, { openTerminal }: Outside): Promise<Said> {
  if (openTerminal === null) return given;
  const terminal = openTerminal();
  try {
    return await askMissing(given, units, terminal.ask);
  } finally {
    terminal.close();
  }
}

/** `--open-angle` as commander keeps it: `openAngle`. */
function optionName(option: string): string {
  return option.slice(2).replace(/-(\w)/g, (_dash, letter: string) => letter.toUpperCase());
}
