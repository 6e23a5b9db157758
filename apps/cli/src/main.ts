import { availableParallelism } from "node:os";
import { isMainThread, parentPort } from "node:worker_threads";
import { asBuiltJob, checkJob, mapLeaf, placeJob, placeLeaf, rankRamOnLeaf, swingJob } from "@pintle/job";
import { serveTasks } from "./batch/worker-tasks.ts";
import { exitCode } from "./exit-code.ts";
import { openTerminal } from "./input/terminal.ts";
import type { Operations } from "./operations.ts";
import type { Outside } from "./outside.ts";
import { runProgram } from "./program.ts";
import { columnsAsked, pageColumns } from "./reporters/text/page.ts";
import { createStyle, wantsColour } from "./reporters/text/style.ts";

const operations: Operations = {
  place: placeJob,
  placeLeaf,
  rankRam: rankRamOnLeaf,
  mapLeaf,
  check: checkJob,
  swing: swingJob,
  asBuilt: asBuiltJob,
};

function realOutside(): Outside {
  const { stdin, stdout, stderr, env } = process;
  return {
    operations,
    print: (text) => stdout.write(text),
    tell: (lines) => {
      for (const line of lines) stderr.write(`${line}\n`);
    },
    openTerminal: stdin.isTTY && stderr.isTTY ? openTerminal : null,
    style: createStyle(wantsColour(stdout.isTTY === true, env)),
    columns: pageColumns(stdout.columns ?? columnsAsked(env)),
    // People copy what a report suggests; through npm the command has another name.
    command: env.npm_lifecycle_event === undefined ? "pintle" : "npm run --silent pintle --",
    showsProgress: stderr.isTTY === true,
    cores: availableParallelism(),
  };
}

async function main(): Promise<void> {
  // `pintle … | head`: the reader has seen enough.
  process.stdout.on("error", (error: NodeJS.ErrnoException) => {
    if (error.code !== "EPIPE") throw error;
    process.exit();
  });
  try {
    process.exitCode = await runProgram(process.argv.slice(2), realOutside());
  } catch (error) {
    // A bug of ours must not read as "a limit fails", which is what Node's own exit code 1 would say.
    process.stderr.write(
      `pintle broke; please report this: ${error instanceof Error ? error.stack : error}\n`,
    );
    process.exitCode = exitCode.badInput;
  }
}

if (isMainThread) await main();
else if (parentPort !== null) serveTasks(parentPort, operations);
