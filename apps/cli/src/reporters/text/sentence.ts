import { cleanText } from "../../output/clean-text.ts";

/** Words of the job package, which begin small, as a sentence of their own. */
export function sentence(words: string): string {
  const clean = cleanText(words);
  return `${clean.charAt(0).toUpperCase()}${clean.slice(1)}${/[.!?]$/.test(clean) ? "" : "."}`;
}
