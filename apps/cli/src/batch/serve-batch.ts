import type { MessagePort } from "node:worker_threads";
import type { Operations } from "../operations.ts";
import { type JudgedFile, judgeFile } from "./judged-file.ts";

/** The worker's side of the pool: judges the files of each message and answers with the results, in order. */
export function serveBatch(port: MessagePort, { check }: Operations): void {
  port.on("message", async (files: readonly string[]) => {
    const judged: JudgedFile[] = [];
    for (const file of files) judged.push(await judgeFile(file, check));
    port.postMessage(judged);
  });
}
