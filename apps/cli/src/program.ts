import { Command, CommanderError } from "commander";
import about from "../package.json" with { type: "json" };
import { addAsBuilt } from "./commands/as-built.ts";
import { addCheck } from "./commands/check.ts";
import { addConvert } from "./commands/convert.ts";
import { addFirstLook } from "./commands/first-look.ts";
import { addNew } from "./commands/new.ts";
import { addPack } from "./commands/pack.ts";
import { addPlace } from "./commands/place.ts";
import { addServe } from "./commands/serve.ts";
import { addSwing } from "./commands/swing.ts";
import { type ExitCode, exitCode } from "./exit-code.ts";
import { InputEnded } from "./input/terminal.ts";
import type { Outside } from "./outside.ts";

/** Reads the command line and does what it says. Misuse is told on standard error. @returns what the shell is told */
export async function runProgram(words: readonly string[], outside: Outside): Promise<ExitCode> {
  let code: ExitCode = exitCode.nothingFails;
  const end = (said: ExitCode) => {
    code = said;
  };
  const program = new Command("pintle")
    .description("Plan, place and prove the motorising of a hinged driveway gate.")
    .version(about.version)
    .exitOverride()
    .configureOutput({ writeOut: outside.print, writeErr: (text) => outside.tell([text.trimEnd()]) })
    .showHelpAfterError("(--help after a command shows how it is used)")
    .addHelpText("after", "\nExit codes: 0 nothing fails, 1 a limit fails, 2 bad input or misuse.");
  for (const add of [
    addNew,
    addPlace,
    addCheck,
    addSwing,
    addAsBuilt,
    addPack,
    addServe,
    addConvert,
    addFirstLook,
  ])
    add(program, outside, end);
  try {
    await program.parseAsync(words, { from: "user" });
  } catch (error) {
    if (error instanceof InputEnded) outside.tell([error.message]);
    else if (!(error instanceof CommanderError)) throw error;
    return error instanceof CommanderError && error.exitCode === 0
      ? exitCode.nothingFails
      : exitCode.badInput;
  }
  return code;
}
