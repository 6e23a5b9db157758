import type { Job } from "@pintle/job";
import { type ExitCode, exitCode } from "../exit-code.ts";
import { type LoadedJob, loadJob } from "../input/load-job.ts";
import { cleanText } from "../output/clean-text.ts";
import type { Outside } from "../outside.ts";
import { documentText } from "../reporters/json/document-text.ts";
import { faultText } from "../reporters/text/faults.ts";
import type { Page } from "../reporters/text/page.ts";

/** Options that every reporting command takes. */
export interface ReportOptions {
  readonly json?: true;
  readonly plan?: boolean;
}

/** A command that reads one job and reports one document. */
export interface Report<Document> {
  readonly solve: (job: Job) => Document;
  readonly text: (job: Job, document: Document, page: Page) => readonly string[];
  readonly exit: (document: Document) => ExitCode;
}

/** Reads the job, solves, prints. @returns what the shell is told */
export async function reportOn<Document>(
  path: string,
  options: ReportOptions,
  outside: Outside,
  report: Report<Document>,
): Promise<ExitCode> {
  const loaded = await loadJob(path);
  if (!loaded.ok) return refuse(loaded, options, outside);
  tellNotes(loaded, outside);
  const document = report.solve(loaded.job);
  const page = pageFor(path, options, outside);
  outside.print(
    options.json ? documentText(document) : `${report.text(loaded.job, document, page).join("\n")}\n`,
  );
  return report.exit(document);
}

export function pageFor(path: string, { plan }: ReportOptions, outside: Outside): Page {
  const { style, columns, command } = outside;
  // From standard input the job has no name that could be typed again.
  const file = path === "-" ? "JOB" : quoted(cleanText(path));
  return {
    style,
    columns,
    plan: plan === true,
    again: (name, ...options) => [command, name, file, ...options].join(" "),
  };
}

/** As a shell takes it for one word. */
function quoted(word: string): string {
  return /^[\w./:@%+=-]+$/.test(word) ? word : `'${word.replaceAll("'", "'\\''")}'`;
}

/** Bad input: a line a fault for people; for programs the same as a document, so that `--json` always gives one. */
export function refuse(
  { name, faults }: Extract<LoadedJob, { ok: false }>,
  { json }: ReportOptions,
  outside: Outside,
): ExitCode {
  outside.tell(faultText(name, faults));
  if (json) outside.print(documentText({ faults: faults.map((fault) => ({ file: name, ...fault })) }));
  return exitCode.badInput;
}

export function tellNotes({ name, notes }: Extract<LoadedJob, { ok: true }>, outside: Outside): void {
  outside.tell(notes.map((note) => `${name}: ${note}`));
}
