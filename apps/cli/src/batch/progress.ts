/** How far a batch is, for a person who watches. */
export interface Progress {
  readonly update: (done: number) => void;
  readonly stop: () => void;
}

/** A bar on standard error when a person is there to see it; nothing otherwise. */
export async function startProgress(total: number, isSeen: boolean): Promise<Progress> {
  if (!isSeen) return { update: () => undefined, stop: () => undefined };
  const { default: cliProgress } = await import("cli-progress");
  const bar = new cliProgress.SingleBar({
    format: "{bar} {value} of {total} jobs, about {eta_formatted} left",
    stream: process.stderr,
    clearOnComplete: true,
    hideCursor: true,
  });
  bar.start(total, 0);
  return { update: (done) => bar.update(done), stop: () => bar.stop() };
}
