import { type Job, jsonText, type PlaceDocument, withPlacements } from "@pintle/job";
import { type Command, InvalidArgumentError, Option } from "commander";
import { type ExitCode, exitCode, gravest } from "../exit-code.ts";
import { loadJob } from "../input/load-job.ts";
import { cleanText } from "../output/clean-text.ts";
import { isThere, printOrWrite, type TargetOptions } from "../output/print-or-write.ts";
import type { Outside } from "../outside.ts";
import { applyChange, type ChangedJob, type ChangeKind, changeKinds } from "../place/apply-change.ts";
import { searchJob } from "../place/search-job.ts";
import { placeText } from "../reporters/text/place.ts";
import { wholeNumber } from "./number-option.ts";
import { pageFor, type ReportOptions, refuse, tellNotes } from "./with-job.ts";

interface PlaceCommandOptions extends ReportOptions, TargetOptions {
  readonly best: number;
  readonly everyRam?: true;
  readonly map?: { readonly columns: number; readonly rows: number };
  readonly ram?: string;
  readonly apply?: ChangeKind;
  readonly workers?: number;
}

export function addPlace(program: Command, outside: Outside, end: (code: ExitCode) => void): void {
  program
    .command("place")
    .summary("find where the ram's two pins go")
    .description(
      "Find, for every leaf of a job, the pins with the largest reserve: the error that every pin may have with all limits still kept. When nothing fits, say the least change of each kind that would help.",
    )
    .argument("<job>", "job file, or - for standard input")
    .option("--best <count>", "how many placements that differ in kind to show", wholeNumber(1, 20), 4)
    .option("--every-ram", "rank every ram of the job too")
    .option("--map <columns x rows>", "map of where the post pin may go, such as 41x17", mapSize)
    .option("--ram <id>", "search with this ram of the job instead of each leaf's own")
    .addOption(
      new Option("--apply <kind>", "where nothing fits, make this change and search again").choices(
        changeKinds,
      ),
    )
    .option("--out <file>", "write the job with the best pins, as solved, to a file")
    .option("--force", "replace the file if it is there")
    .option(
      "--workers <count>",
      "how many workers share long searches (all cores unless given)",
      wholeNumber(1, 64),
    )
    .option("--no-plan", "leave out the drawing")
    .option("--json", "print one JSON document")
    .action(async (path: string, options: PlaceCommandOptions) => {
      end(await place(path, options, outside));
    });
}

/** A map of more positions than this takes minutes. */
const mostPositions = 40_000;

function mapSize(text: string): { readonly columns: number; readonly rows: number } {
  const [columns = 0, rows = 0] = /^\d{1,4}x\d{1,4}$/i.test(text) ? text.split(/x/i).map(Number) : [];
  if (columns >= 2 && rows >= 2 && columns * rows <= mostPositions) return { columns, rows };
  throw new InvalidArgumentError(
    `Expected columns x rows such as 41x17, from 2x2 to ${mostPositions} positions.`,
  );
}

async function place(path: string, options: PlaceCommandOptions, outside: Outside): Promise<ExitCode> {
  const { out, force } = options;
  // Said before a search that takes its time, not after it.
  if (out !== undefined && !force && (await isThere(out))) {
    outside.tell([cleanText(`${out}: a file of that name is there already; --force replaces it`)]);
    return exitCode.badInput;
  }
  const loaded = await loadJob(path);
  if (!loaded.ok) return refuse(loaded, options, outside);
  tellNotes(loaded, outside);
  const job = withRam(loaded.job, options.ram);
  if (typeof job === "string") {
    outside.tell([cleanText(job)]);
    return exitCode.badInput;
  }
  const changed = await solve(job, options, outside);
  // With `--out -` the job itself is the output, for the next command in a pipe.
  if (out !== "-") report(path, changed, options, outside);
  return gravest([verdict(changed.document), await write(changed, options, outside)]);
}

/** The job with every leaf on one ram, or what is wrong with that ram. */
function withRam(job: Job, ram: string | undefined): Job | string {
  if (ram === undefined) return job;
  const ids = (job.rams ?? []).map(({ id }) => id);
  if (!ids.includes(ram))
    return `--ram: found ${ram}, expected one of the job's rams: ${ids.join(", ") || "it has none"}`;
  return { ...job, leaves: job.leaves.map((leaf) => ({ ...leaf, ram })) };
}

async function solve(job: Job, options: PlaceCommandOptions, outside: Outside): Promise<ChangedJob> {
  const { best, map, workers, everyRam = false } = options;
  const settings = { best, everyRam, ...(map ? { map } : {}), ...(workers ? { workers } : {}) };
  const search = (one: Job) => searchJob(one, settings, outside);
  if (options.apply !== undefined) return applyChange(job, options.apply, search);
  return { job, document: await search(job), applied: [], notApplied: [] };
}

function report(path: string, changed: ChangedJob, options: PlaceCommandOptions, outside: Outside): void {
  const { job, document, applied, notApplied } = changed;
  outside.tell(notApplied.map(cleanText));
  outside.print(
    options.json
      ? jsonText(options.apply === undefined ? document : { ...document, applied })
      : `${placeText(job, { ...document, applied }, pageFor(path, options, outside)).join("\n")}\n`,
  );
}

/** The gravest of the leaves; a leaf that could not be searched counts only when none could. */
function verdict({ leaves }: PlaceDocument): ExitCode {
  const searched = leaves.filter(({ notSearched, rams }) => notSearched === undefined || rams !== undefined);
  if (searched.length === 0) return exitCode.badInput;
  const isPlaced = ({ placements, rams }: PlaceDocument["leaves"][number]) =>
    placements.length > 0 || (rams ?? []).some(({ reserveMm }) => reserveMm !== null);
  return searched.every(isPlaced) ? exitCode.nothingFails : exitCode.limitFails;
}

async function write(
  { job, document }: ChangedJob,
  { out, force }: TargetOptions,
  outside: Outside,
): Promise<ExitCode> {
  if (out === undefined) return exitCode.nothingFails;
  if (document.leaves.every(({ placements }) => placements.length === 0)) {
    outside.tell([cleanText(`${out}: not written: no placement was found`)]);
    return exitCode.nothingFails;
  }
  const text = jsonText(withPlacements(job, document));
  return printOrWrite(text, { out, ...(force ? { force } : {}) }, outside);
}
