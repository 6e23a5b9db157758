import type { Display } from "@pintle/job";
import { type LeafValue, leafValues } from "./leaf-values.ts";

/** What was said so far, as typed; a value left out is assumed or asked. */
export interface Said {
  readonly title?: string;
  readonly values: Readonly<Partial<Record<LeafValue["key"], string>>>;
}

/** Asks for what the options left open: the title and the five values that decide most, six questions in all. */
export async function askMissing(
  said: Said,
  display: Display,
  ask: (question: string) => Promise<string>,
): Promise<Said> {
  const title = said.title ?? (await ask("Title of the job: ")).trim();
  const values = { ...said.values };
  for (const value of leafValues) {
    if (value.question === null || values[value.key] !== undefined) continue;
    const answer = await answerTo(value, display, ask);
    if (answer !== "") values[value.key] = answer;
  }
  return { title, values };
}

/** Asks again until the answer can be read; an empty one takes the assumed value. */
async function answerTo(
  value: LeafValue,
  display: Display,
  ask: (question: string) => Promise<string>,
): Promise<string> {
  const suggestion = value.assumed === null ? "" : ` [${suggested(value)}]`;
  let prompt = `${value.question}${suggestion}: `;
  for (;;) {
    const answer = (await ask(prompt)).trim();
    if (answer === "" && value.assumed !== null) return "";
    const read = value.read(answer, display);
    if (read.ok) return answer;
    prompt = `Expected ${read.expected}: `;
  }
}

function suggested({ key, assumed }: LeafValue): string {
  if (key.endsWith("Mm")) return `${assumed} mm`;
  return key.endsWith("Deg") ? `${assumed}°` : String(assumed);
}
