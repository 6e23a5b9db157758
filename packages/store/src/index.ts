export { jobFileName } from "./archive/file-name.ts";
export { type FaultyFile, type ReadArchive, type ReadFile, readArchive } from "./archive/read-archive.ts";
export { type ListedJob, writeArchive } from "./archive/write-archive.ts";
export { type Channel, createMemoryChannels, isJobMessage, type JobMessage } from "./channel.ts";
export type { Path } from "./document/path.ts";
export type { UndoState } from "./edit-history.ts";
export {
  type Added,
  type ChosenFile,
  type Imported,
  isListMessage,
  JobList,
  type JobListParts,
  type Listing,
  type ListMessage,
  type NoSuchJob,
} from "./job-list.ts";
export type { PatchStep } from "./json-patch.ts";
export {
  type Keeping,
  KeptJob,
  type KeptJobParts,
  type Opened,
  openKeptJob,
  startKeptJob,
} from "./kept-job.ts";
export { createLiveJob, type Edited, LiveJob } from "./live-job.ts";
export type {
  Appended,
  Created,
  JobEntry,
  JobStorage,
  Kept,
  Listed,
  Loaded,
  NewJob,
  NotKept,
} from "./storage/job-storage.ts";
export { createMemoryStorage } from "./storage/memory-storage.ts";
export { type StorageClause, storageContract } from "./storage/storage-contract.ts";
