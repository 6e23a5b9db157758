import { availableParallelism, cpus, loadavg, totalmem } from "node:os";

/** The machine in one line: processor, cores, memory, Node, system, and how busy it was before this run. */
export function machineLine(): string {
  const model = cpus()[0]?.model.trim() || "processor not named by the system";
  const memory = `${(totalmem() / 2 ** 30).toFixed(1)} GiB`;
  const { versions, platform, arch } = process;
  const load = loadavg()[0] ?? 0;
  const caution = load > 0.5 ? " (other work is running: times come out too long)" : "";
  return `${model}, ${availableParallelism()} cores, ${memory}, Node ${versions.node}, ${platform} ${arch}, load ${load.toFixed(1)}${caution}`;
}
