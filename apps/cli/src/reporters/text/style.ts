import pc from "picocolors";

/** How emphasis reaches the page; without colour every function gives its text back. */
export interface Style {
  readonly strong: (text: string) => string;
  /** What breaks a limit. What holds is plain ink. */
  readonly bad: (text: string) => string;
  /** What moves or is chosen: the ram, its pins, the bars. */
  readonly accent: (text: string) => string;
  readonly quiet: (text: string) => string;
}

/** Colour never says something alone: what is coloured has its word or mark too. */
export function createStyle(isColoured: boolean): Style {
  const { bold, red, cyan, dim } = pc.createColors(isColoured);
  return { strong: bold, bad: (text) => bold(red(text)), accent: cyan, quiet: dim };
}

/** Colour goes to a terminal that wants it (the NO_COLOR and FORCE_COLOR conventions, no-color.org). */
export function wantsColour(isTerminal: boolean, environment: NodeJS.ProcessEnv): boolean {
  const isSet = (name: string) => (environment[name] ?? "") !== "";
  if (isSet("NO_COLOR")) return false;
  return isSet("FORCE_COLOR") || (isTerminal && environment.TERM !== "dumb");
}
