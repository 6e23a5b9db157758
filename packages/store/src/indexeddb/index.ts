export { type OpenedStorage, openIndexedDbStorage } from "./indexed-db-storage.ts";
export { openTabChannel } from "./tab-channel.ts";
