/** Filled in with the service worker. */
export function UpdateBar() {
  return null;
}
