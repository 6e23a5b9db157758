// The architecture check: who may import whom (rules in .dependency-cruiser.mjs).
import { cruise, format } from "dependency-cruiser";
import extractTsConfig from "dependency-cruiser/config-utl/extract-ts-config";
import config from "../.dependency-cruiser.mjs";

/** A cruise that saw fewer modules than this did not look at the house: a pass of nothing is a failure. */
const fewestModules = 30;

const { options, forbidden = [] } = config;
const { output } = await cruise(
  ["packages", "apps"],
  { ...options, ruleSet: { forbidden }, validate: true, exclude: { path: "/(dist|bench)/" } },
  undefined,
  { tsConfig: extractTsConfig("tsconfig.base.json") },
);
if (typeof output === "string") throw new Error("expected the cruise as data, found text");
const seen = output.modules.filter(({ source }) => /^(packages|apps)\//.test(source)).length;
const report = await format(output, { outputType: "err-long" });
process.stdout.write(`${String(report.output).trim()}\n${seen} modules of our own seen\n`);
if (seen < fewestModules) process.stdout.write(`expected at least ${fewestModules}\n`);
process.exitCode = output.summary.error > 0 || seen < fewestModules ? 1 : 0;
