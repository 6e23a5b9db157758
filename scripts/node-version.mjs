const needed = [20, 19];

/** Stops with a plain sentence when Node is older than the packages here accept. */
export function requireNode() {
  const [major = 0, minor = 0] = process.versions.node.split(".").map(Number);
  const [neededMajor = 0, neededMinor = 0] = needed;
  if (major > neededMajor || (major === neededMajor && minor >= neededMinor)) return;
  process.stderr.write(
    `Pintle needs Node ${needed.join(".")} or newer; this is Node ${process.versions.node}. Install a newer Node and run the same command again.\n`,
  );
  process.exit(2);
}
