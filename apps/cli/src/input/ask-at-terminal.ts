import { createInterface } from "node:readline/promises";

/** The input ended (Ctrl-D, Ctrl-C) before the last question was answered. */
export class InputEnded extends Error {
  override readonly message = "the input ended before the last question was answered; nothing was written";
}

/** Asks on standard error, so that standard output carries only the result. Throws InputEnded. */
export async function askAtTerminal(question: string): Promise<string> {
  const terminal = createInterface({ input: process.stdin, output: process.stderr });
  const ended = new Promise<never>((_resolve, reject) => {
    terminal.once("close", () => reject(new InputEnded()));
  });
  try {
    return await Promise.race([terminal.question(question), ended]);
  } finally {
    ended.catch(() => undefined);
    terminal.close();
  }
}
