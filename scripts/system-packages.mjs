// What the tests need from the system: a browser, and programs that look at what Pintle prints. Debian's packages.
import { spawnSync } from "node:child_process";
import { existsSync } from "node:fs";

/** @param {string} name */
const isProgram = (name) => ["/usr/bin", "/usr/local/bin"].some((folder) => existsSync(`${folder}/${name}`));

const needs = [
  { name: "chromium", isThere: () => process.env.CHROMIUM !== undefined || isProgram("chromium") },
  { name: "poppler-utils", isThere: () => isProgram("pdftoppm") },
  { name: "qpdf", isThere: () => isProgram("qpdf") },
  { name: "librsvg2-bin", isThere: () => isProgram("rsvg-convert") },
  {
    name: "python3-ezdxf",
    isThere: () => spawnSync("/usr/bin/python3", ["-c", "import ezdxf"]).status === 0,
  },
];

/** Installs what is missing; where it cannot, it says so and the tests that need it fail, never skip. */
export function ensureSystemPackages() {
  const missing = needs.filter(({ isThere }) => !isThere()).map(({ name }) => name);
  if (missing.length === 0) return;
  process.stdout.write(`Setting up: installing ${missing.join(", ")} from the system's packages …\n`);
  const isRoot = process.getuid?.() === 0;
  const [program, ...words] = isRoot ? ["apt-get"] : ["sudo", "-n", "apt-get"];
  const environment = { ...process.env, DEBIAN_FRONTEND: "noninteractive" };
  for (const task of [["update"], ["install", "-y", "--no-install-recommends", ...missing]]) {
    const run = spawnSync(program ?? "", [...words, ...task], { env: environment, encoding: "utf8" });
    if (run.status === 0) continue;
    const why = run.error?.message ?? run.stderr.trim().split("\n").slice(-3).join("\n");
    process.stdout.write(
      `Could not install them: ${why}\nInstall by hand: apt-get install ${missing.join(" ")}\n`,
    );
    return;
  }
}
