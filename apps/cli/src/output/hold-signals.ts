const signals = ["SIGINT", "SIGTERM"] as const;

/** Until the function given back is called, Ctrl-C waits; then it takes its course. */
export function holdSignals(): () => void {
  let held: NodeJS.Signals | null = null;
  const hold = (signal: NodeJS.Signals) => {
    held = signal;
  };
  for (const signal of signals) process.on(signal, hold);
  return () => {
    for (const signal of signals) process.off(signal, hold);
    if (held !== null) process.kill(process.pid, held);
  };
}
