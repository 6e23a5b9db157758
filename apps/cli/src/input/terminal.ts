import { createInterface } from "node:readline";

/** A person at a terminal who can be asked. */
export interface Terminal {
  readonly ask: (question: string) => Promise<string>;
  readonly close: () => void;
}

/** The input ended (Ctrl-D, Ctrl-C) before the last question was answered. */
export class InputEnded extends Error {
  override readonly message = "the input ended before the last question was answered; nothing was written";
}

/**
 * Asks on standard error, so that standard output carries only the result. Lines that come before their
 * question (a paste of several answers) wait for it. `ask` throws InputEnded when no more can come.
 */
export function openTerminal(): Terminal {
  const reader = createInterface({ input: process.stdin, output: process.stderr });
  const early: string[] = [];
  let waiting: { readonly resolve: (line: string) => void; readonly reject: (error: Error) => void } | null =
    null;
  let isClosed = false;
  reader.on("line", (line) => {
    if (waiting === null) early.push(line);
    else waiting.resolve(line);
    waiting = null;
  });
  reader.on("close", () => {
    isClosed = true;
    waiting?.reject(new InputEnded());
  });
  const ask = (question: string) =>
    new Promise<string>((resolve, reject) => {
      reader.setPrompt(question);
      const line = early.shift();
      if (line !== undefined) resolve(line);
      else if (isClosed) reject(new InputEnded());
      else {
        waiting = { resolve, reject };
        reader.prompt();
      }
    });
  return { ask, close: () => reader.close() };
}
