import pc from "picocolors";

/** How emphasis reaches the page; without colour every function gives its text back. */
export interface Style {
  readonly strong: (text: string) => string;
  readonly good: (text: string) => string;
  readonly bad: (text: string) => string;
  readonly warn: (text: string) => string;
  readonly quiet: (text: string) => string;
}

/** Colour never says something alone: each coloured line has its word too. */
export function createStyle(isColoured: boolean): Style {
  const { bold, green, red, yellow, dim } = pc.createColors(isColoured);
  return { strong: bold, good: green, bad: red, warn: yellow, quiet: dim };
}

/** Colour goes to a terminal that wants it (the NO_COLOR and FORCE_COLOR conventions, no-color.org). */
export function wantsColour(isTerminal: boolean, environment: NodeJS.ProcessEnv): boolean {
  const isSet = (name: string) => (environment[name] ?? "") !== "";
  if (isSet("NO_COLOR")) return false;
  return isSet("FORCE_COLOR") || (isTerminal && environment.TERM !== "dumb");
}
