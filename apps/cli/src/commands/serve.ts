import { existsSync } from "node:fs";
import type { AddressInfo } from "node:net";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import type { Command } from "commander";
import { type ExitCode, exitCode } from "../exit-code.ts";
import type { Outside } from "../outside.ts";
import { openBrowser } from "../serve/open-browser.ts";
import { createStaticServer } from "../serve/static-server.ts";

interface ServeOptions {
  readonly port?: string;
  readonly open?: true;
  readonly host: string;
  readonly folder: string;
}

const usualPort = 4810;

/** The built workbench lies beside the bundled command line. */
const builtFolder = join(dirname(fileURLToPath(import.meta.url)), "web");

export function addServe(program: Command, outside: Outside, end: (code: ExitCode) => void): void {
  program
    .command("serve")
    .summary("serve the workbench to a browser")
    .description("Serve the workbench until stopped. Jobs stay in the browser; nothing is sent here.")
    .option(
      "--port <number>",
      `port to listen on; 0 takes any that is free; ${usualPort}, or a free one, unless given`,
    )
    .option("--host <address>", "address to listen on; only this machine unless given", "127.0.0.1")
    .option("--folder <path>", "folder of the built workbench", builtFolder)
    .option("--open", "open the workbench in the browser of this machine, when it has one")
    .action(async ({ port = process.env.PORT, host, folder, open }: ServeOptions) => {
      const wanted = Number(port ?? usualPort);
      if (!Number.isInteger(wanted) || wanted < 0 || wanted > 65535) {
        outside.tell([`--port: found ${port}, expected a whole number from 0 to 65535`]);
        return end(exitCode.badInput);
      }
      if (!existsSync(join(folder, "index.html"))) {
        outside.tell([
          `--folder: found no workbench in ${folder}, expected one that was built (npm start builds it)`,
        ]);
        return end(exitCode.badInput);
      }
      const server = await createStaticServer(folder);
      const listen = (on: number) =>
        new Promise<NodeJS.ErrnoException | null>((settled) => {
          server.once("error", settled);
          server.listen(on, host, () => settled(null));
        });
      let failed = await listen(wanted);
      // A second workbench beside the first is no mistake, unless the port was asked for.
      if (failed?.code === "EADDRINUSE" && port === undefined) failed = await listen(0);
      if (failed !== null) {
        const why = failed.code === "EADDRINUSE" ? "is taken; choose another with --port" : failed.message;
        outside.tell([`port ${port} ${why}`]);
        return end(exitCode.badInput);
      }
      const { port: given } = server.address() as AddressInfo;
      const address = `http://${host.includes(":") ? `[${host}]` : host}:${given}/`;
      outside.print(`Workbench: ${address}\nStop it with Ctrl-C.\n`);
      if (open) openBrowser(address);
      await new Promise<void>((stopped) => {
        for (const signal of ["SIGINT", "SIGTERM"] as const) process.once(signal, () => stopped());
      });
      server.closeAllConnections();
      server.close();
      end(exitCode.nothingFails);
    });
}
