/** Paper for indoors, slate for the dark, sun for a phone in full daylight. */
export const themes = ["paper", "slate", "sun"] as const;
export type Theme = (typeof themes)[number];

const key = "pintle-theme";

/** The theme chosen on this device, else what the device asks for. */
export function keptTheme(): Theme {
  const kept = readKept();
  if (kept !== undefined) return kept;
  if (matchMedia("(prefers-contrast: more)").matches) return "sun";
  return matchMedia("(prefers-color-scheme: dark)").matches ? "slate" : "paper";
}

function readKept(): Theme | undefined {
  try {
    return themes.find((theme) => theme === localStorage.getItem(key));
  } catch {
    return undefined;
  }
}

export function applyTheme(theme: Theme): void {
  document.documentElement.dataset.theme = theme;
  const paper = getComputedStyle(document.documentElement).getPropertyValue("--paper");
  document.querySelector('meta[name="theme-color"]')?.setAttribute("content", paper.trim());
}

export function keepTheme(theme: Theme): void {
  applyTheme(theme);
  try {
    localStorage.setItem(key, theme);
  } catch {
    // A device that keeps nothing still shows the theme until it is closed.
  }
}
