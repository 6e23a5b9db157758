import { existsSync } from "node:fs";
import type { AddressInfo } from "node:net";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import type { Command } from "commander";
import { type ExitCode, exitCode } from "../exit-code.ts";
import type { Outside } from "../outside.ts";
import { createStaticServer } from "../serve/static-server.ts";

interface ServeOptions {
  readonly port: string;
  readonly host: string;
  readonly folder: string;
}

/** The built workbench lies beside the bundled command line. */
const builtFolder = join(dirname(fileURLToPath(import.meta.url)), "web");

export function addServe(program: Command, outside: Outside, end: (code: ExitCode) => void): void {
  program
    .command("serve")
    .summary("serve the workbench to a browser")
    .description("Serve the workbench until stopped. Jobs stay in the browser; nothing is sent here.")
    .option("--port <number>", "port to listen on; 0 takes any that is free", process.env.PORT ?? "4810")
    .option("--host <address>", "address to listen on; only this machine unless given", "127.0.0.1")
    .option("--folder <path>", "folder of the built workbench", builtFolder)
    .action(async ({ port, host, folder }: ServeOptions) => {
      const wanted = Number(port);
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
      const failed = await new Promise<NodeJS.ErrnoException | null>((settled) => {
        server.once("error", settled);
        server.listen(wanted, host, () => settled(null));
      });
      if (failed !== null) {
        const why = failed.code === "EADDRINUSE" ? "is taken; choose another with --port" : failed.message;
        outside.tell([`port ${port} ${why}`]);
        return end(exitCode.badInput);
      }
      const { port: given } = server.address() as AddressInfo;
      outside.print(`Workbench: http://${host.includes(":") ? `[${host}]` : host}:${given}/\n`);
      await new Promise<void>((stopped) => {
        for (const signal of ["SIGINT", "SIGTERM"] as const) process.once(signal, () => stopped());
      });
      server.closeAllConnections();
      server.close();
      end(exitCode.nothingFails);
    });
}
