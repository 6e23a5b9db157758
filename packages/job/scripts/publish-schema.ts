// Writes schema/pintle-job.schema.json from the schema in the source: npx tsx packages/job/scripts/publish-schema.ts
import { writeFileSync } from "node:fs";
import { publishedSchema } from "../src/schema/published-schema.ts";
import { jsonText } from "../src/write-job.ts";

writeFileSync(new URL("../schema/pintle-job.schema.json", import.meta.url), jsonText(publishedSchema()));
