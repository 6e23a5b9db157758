export type { Path } from "./document/path.ts";
export type { UndoState } from "./edit-history.ts";
export { createLiveJob, type Edited, LiveJob } from "./live-job.ts";
export type { JobEntry, JobStorage, Kept, NotKept } from "./storage/job-storage.ts";
export { createMemoryStorage } from "./storage/memory-storage.ts";
