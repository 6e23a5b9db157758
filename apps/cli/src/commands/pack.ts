import { mkdir, readFile } from "node:fs/promises";
import { createRequire } from "node:module";
import { join } from "node:path";
import { checkJob } from "@pintle/job";
import type { PackFonts, PackOptions, PaperName } from "@pintle/papers";
import { type Command, InvalidArgumentError, Option } from "commander";
import { type ExitCode, exitCode } from "../exit-code.ts";
import { loadJob } from "../input/load-job.ts";
import { reasonOf } from "../input/system-error.ts";
import { cleanText } from "../output/clean-text.ts";
import { writeNewFile } from "../output/write-new-file.ts";
import type { Outside } from "../outside.ts";
import { documentText } from "../reporters/json/document-text.ts";
import { refuse, tellNotes } from "./with-job.ts";

interface Options {
  readonly out: string;
  readonly paper?: PaperName;
  readonly side: "ram" | "other";
  readonly revision?: string;
  readonly date: Date;
  readonly force?: true;
  readonly json?: true;
}

export function addPack(program: Command, outside: Outside, end: (code: ExitCode) => void): void {
  program
    .command("pack")
    .summary("make the papers: PDF, plan as SVG and DXF")
    .description(
      "Make the papers of a job: cautions, setting out, plan, full-size templates, limits and swing as one PDF, and the plan of each leaf as SVG and DXF.",
    )
    .argument("<job>", "job file, or - for standard input")
    .requiredOption("--out <folder>", "folder to write to; made when it is not there")
    .addOption(
      new Option(
        "--paper <paper>",
        "paper; a4, or letter for a job in feet and inches, unless given",
      ).choices(["a4", "letter"]),
    )
    .addOption(
      new Option("--side <side>", "side of the gate that the reader of the plans stands on")
        .choices(["ram", "other"])
        .default("ram"),
    )
    .option("--revision <text>", "revision in the title block; a mark of the job's content unless given")
    .option("--date <date>", "date of issue, such as 2026-03-14; today unless given", dayOf, new Date())
    .option("--force", "replace files that are there")
    .option("--json", "print one JSON document")
    .action(async (path: string, options: Options) => {
      end(await makePapers(path, options, outside));
    });
}

async function makePapers(path: string, options: Options, outside: Outside): Promise<ExitCode> {
  const loaded = await loadJob(path);
  if (!loaded.ok) return refuse(loaded, options.json ? { json: true } : {}, outside);
  tellNotes(loaded, outside);
  // Loaded here, so that no other command waits for what makes PDFs.
  const { packOf } = await import("@pintle/papers");
  const { files, notes } = await packOf(loaded.job, packOptions(options, await readFonts()));
  outside.tell(notes.map(cleanText));
  const written: string[] = [];
  for (const { name, bytes } of files) {
    const target = join(options.out, name);
    const result = await mkdir(options.out, { recursive: true }).then(
      () => writeNewFile(target, bytes, options.force === true),
      (error: unknown) => ({ ok: false as const, reason: reasonOf(error) }),
    );
    if (!result.ok) {
      outside.tell([cleanText(`${target}: not written: ${result.reason}`)]);
      return exitCode.badInput;
    }
    written.push(target);
  }
  outside.print(
    options.json ? documentText({ files: written, notes }) : `${written.map(cleanText).join("\n")}\n`,
  );
  return checkJob(loaded.job).summary.fail === 0 ? exitCode.nothingFails : exitCode.limitFails;
}

function packOptions({ paper, side, revision, date }: Options, fonts: PackFonts): PackOptions {
  return {
    fonts,
    date,
    standsOn: side === "ram" ? "ramSide" : "otherSide",
    ...(paper === undefined ? {} : { paper }),
    ...(revision === undefined ? {} : { revision }),
  };
}

/** IBM Plex Sans (SIL Open Font License), as its package ships it. */
async function readFonts(): Promise<PackFonts> {
  const require = createRequire(import.meta.url);
  const read = async (file: string) => new Uint8Array(await readFile(file));
  return {
    regular: await read(
      require.resolve("@expo-google-fonts/ibm-plex-sans/400Regular/IBMPlexSans_400Regular.ttf"),
    ),
    bold: await read(
      require.resolve("@expo-google-fonts/ibm-plex-sans/600SemiBold/IBMPlexSans_600SemiBold.ttf"),
    ),
  };
}

function dayOf(text: string): Date {
  const day = new Date(`${text}T00:00:00Z`);
  // Round trip: 2026-02-30 would otherwise become the second of March.
  if (
    !/^\d{4}-\d\d-\d\d$/.test(text) ||
    Number.isNaN(day.getTime()) ||
    day.toISOString().slice(0, 10) !== text
  )
    throw new InvalidArgumentError("expected a date such as 2026-03-14.");
  return day;
}
