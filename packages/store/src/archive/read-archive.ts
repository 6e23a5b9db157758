import { type Fault, type Job, readJob } from "@pintle/job";
import { strFromU8, unzipSync } from "fflate";
import { archiveFormat, archiveVersion, contentsName, jobsFolder } from "./archive-format.ts";

/** A job read from a file or an archive. */
export interface ReadFile {
  readonly file: string;
  readonly job: Job;
  readonly archived: boolean;
}

/** A file that holds no job that can be read, with every fault in it. */
export interface FaultyFile {
  readonly file: string;
  readonly faults: readonly Fault[];
}

export type ReadArchive =
  | { readonly ok: true; readonly jobs: readonly ReadFile[]; readonly faulty: readonly FaultyFile[] }
  | { readonly ok: false; readonly faults: readonly Fault[] };

/** What an archive may unpack to: far more than a firm has, far less than stalls a phone. */
const mostFiles = 20_000;
const mostBytes = 256 * 1024 * 1024;

/** Whether bytes are a zip archive, by their first four. */
export function isArchive(bytes: Uint8Array): boolean {
  return [0x50, 0x4b, 0x03, 0x04].every((byte, index) => bytes[index] === byte);
}

/**
 * Reads an archive of jobs: each job file in it is judged as if it came alone. Other files in it are passed over.
 *
 * Errors (returned): faults of the archive as a whole; a job file with faults stands in `faulty`.
 *
 * ### Example
 *   expect(readArchive(new Uint8Array([1, 2, 3]))).toEqual({
 *     ok: false,
 *     faults: [{ path: "", found: "3 bytes that are no zip archive", expected: "an archive of jobs" }],
 *   });
 */
export function readArchive(bytes: Uint8Array): ReadArchive {
  const unpacked = unpack(bytes);
  if (!unpacked.ok) return unpacked;
  const contents = readContents(unpacked.files[contentsName]);
  if (!contents.ok) return contents;
  const names = Object.keys(unpacked.files).filter((name) => name !== contentsName);
  const read = names.map((file) => ({ file, read: readJob(strFromU8(unpacked.files[file] as Uint8Array)) }));
  return {
    ok: true,
    jobs: read.flatMap(({ file, read: one }) =>
      one.ok ? [{ file, job: one.job, archived: contents.archived.has(file) }] : [],
    ),
    faulty: read.flatMap(({ file, read: one }) => (one.ok ? [] : [{ file, faults: one.faults }])),
  };
}

type Unpacked =
  | { readonly ok: true; readonly files: Record<string, Uint8Array> }
  | { readonly ok: false; readonly faults: readonly Fault[] };

function unpack(bytes: Uint8Array): Unpacked {
  if (!isArchive(bytes))
    return refused(`${bytes.length} bytes that are no zip archive`, "an archive of jobs");
  let count = 0;
  let size = 0;
  try {
    const files = unzipSync(bytes, {
      filter: ({ name, originalSize }) => {
        const wanted = name === contentsName || (name.startsWith(jobsFolder) && name.endsWith(".json"));
        if (!wanted) return false;
        count += 1;
        size += originalSize;
        return count <= mostFiles && size <= mostBytes;
      },
    });
    if (count > mostFiles) return refused(`${count} files`, `an archive of at most ${mostFiles} jobs`);
    if (size > mostBytes)
      return refused(`${size} bytes unpacked`, `an archive of at most ${mostBytes} bytes unpacked`);
    return { ok: true, files };
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    return refused(`a zip archive that cannot be unpacked (${why})`, "a whole archive");
  }
}

type Contents =
  | { readonly ok: true; readonly archived: ReadonlySet<string> }
  | { readonly ok: false; readonly faults: readonly Fault[] };

function readContents(bytes: Uint8Array | undefined): Contents {
  if (bytes === undefined) return refused(`no ${contentsName}`, "an archive of jobs, which has one");
  let contents: unknown;
  try {
    contents = JSON.parse(strFromU8(bytes));
  } catch {
    return refused(`a ${contentsName} that is not JSON`, "an archive of jobs");
  }
  const { format, version, jobs } = (contents ?? {}) as Record<string, unknown>;
  if (format !== archiveFormat || version !== archiveVersion) {
    const found = `format ${JSON.stringify(format)}, version ${JSON.stringify(version)}`;
    return refused(found, `"${archiveFormat}", version ${archiveVersion}`);
  }
  const listed = (Array.isArray(jobs) ? jobs : []).filter(
    (one) => typeof one === "object" && one?.archived === true,
  );
  return { ok: true, archived: new Set(listed.map(({ file }: { file: unknown }) => String(file))) };
}

function refused(found: string, expected: string): { readonly ok: false; readonly faults: readonly Fault[] } {
  return { ok: false, faults: [{ path: "", found, expected }] };
}
