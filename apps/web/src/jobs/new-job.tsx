import type { Device } from "./device.ts";
export function NewJob(_: { readonly device: Device; readonly cancel: () => void }) {
  return null;
}
