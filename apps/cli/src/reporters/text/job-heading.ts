import type { Job } from "@pintle/job";
import { cleanText } from "../../output/clean-text.ts";
import type { Style } from "./style.ts";

export function jobHeading(job: Job, style: Style): string[] {
  const title = cleanText(job.title ?? "");
  return title === "" ? [] : [style.strong(title)];
}
