import { expect, test } from "vitest";
import { freshFolder, pintle } from "./run-pintle.ts";

test("[I15] no command: help on standard error, nothing on standard output, exit 2", () => {
  const { code, out, err } = pintle([], { folder: freshFolder() });
  expect({ code, out }).toEqual({ code: 2, out: "" });
  expect(err).toContain("Usage: pintle [options] [command]");
});

test("[I15] a mistyped command is named, with the likely one, exit 2", () => {
  const { code, out, err } = pintle(["chek"], { folder: freshFolder() });
  expect({ code, out }).toEqual({ code: 2, out: "" });
  expect(err).toContain("unknown command 'chek'");
  expect(err).toContain("Did you mean check?");
});

test("[I15] an unknown option and an option out of bounds are misuse", () => {
  const folder = freshFolder();
  expect(pintle(["check", "--jsn", "a.json"], { folder }).code).toBe(2);
  const { code, err } = pintle(["swing", "a.json", "--step-deg", "0"], { folder });
  expect(code).toBe(2);
  expect(err).toContain("Expected a number above 0, at most 90.");
});

test("[I15] help goes to standard output, exit 0", () => {
  const { code, out, err } = pintle(["--help"], { folder: freshFolder() });
  expect({ code, err }).toEqual({ code: 0, err: "" });
  expect(out).toMatchInlineSnapshot(`
    "Usage: pintle [options] [command]

    Plan, place and prove the motorising of a hinged driveway gate.

    Options:
      -V, --version              output the version number
      -h, --help                 display help for command

    Commands:
      new [options]              begin a job file
      place [options] <job>      find where the ram's two pins go
      check [options] <jobs...>  judge jobs against every limit
      swing [options] <job>      follow the ram over the travel
      asbuilt [options] <job>    find where the pins really are, from tape readings
      pack [options] <job>       make the papers: PDF, plan as SVG and DXF
      serve [options]            serve the workbench to a browser
      convert [options] <job>    bring a job up to this version, or to other units
      help [command]             display help for command

    Exit codes: 0 nothing fails, 1 a limit fails, 2 bad input or misuse.
    "
  `);
});

test("[I15] a command's help says what it does and what it takes", () => {
  const folder = freshFolder();
  expect(pintle(["swing", "--help"], { folder }).out).toMatchInlineSnapshot(`
    "Usage: pintle swing [options] <job>

    Pin-to-pin length, lever arm and clearance at every angle of the travel, for the
    pins in the job.

    Arguments:
      job                   job file, or - for standard input

    Options:
      --step-deg <degrees>  spacing of the angles (default: 5)
      --json                print one JSON document
      -h, --help            display help for command
    "
  `);
  expect(pintle(["convert", "--help"], { folder }).out).toMatchInlineSnapshot(`
    "Usage: pintle convert [options] <job>

    Read a job of any version that can be read and write it as this version does;
    values stay as they are.

    Arguments:
      job                job file, or - for standard input

    Options:
      --display <units>  the units that people type and read (choices: "metric",
                         "us")
      --out <file>       write to a file instead of standard output
      --force            replace the file if it is there
      -h, --help         display help for command
    "
  `);
});

test("[I15] the version is one line", () => {
  expect(pintle(["--version"], { folder: freshFolder() }).out).toMatch(/^\d+\.\d+\.\d+\n$/);
});
