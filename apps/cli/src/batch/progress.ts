/** How far long work is, for a person who watches. */
export interface Progress {
  readonly update: (done: number) => void;
  readonly stop: () => void;
}

const formats = {
  jobs: "{bar} {value} of {total} jobs, about {eta_formatted} left",
  searches: "{bar} {percentage} % searched",
};

/** Work that is done within this time needs no bar [ms]. */
const patienceMs = 300;

/** A bar on standard error when a person is there to see it and has to wait; nothing otherwise. */
export async function startProgress(
  what: keyof typeof formats,
  total: number,
  isSeen: boolean,
): Promise<Progress> {
  if (!isSeen) return { update: () => undefined, stop: () => undefined };
  const { default: cliProgress } = await import("cli-progress");
  // Cursor and line wrapping stay as they are: work broken off with Ctrl-C has no chance to bring them back.
  const bar = new cliProgress.SingleBar({
    format: formats[what],
    stream: process.stderr,
    clearOnComplete: true,
    hideCursor: false,
    linewrap: true,
  });
  const from = Date.now();
  let isStarted = false;
  return {
    update: (done) => {
      if (!isStarted && Date.now() - from < patienceMs) return;
      if (!isStarted) bar.start(total, 0);
      isStarted = true;
      bar.update(done);
    },
    stop: () => bar.stop(),
  };
}
