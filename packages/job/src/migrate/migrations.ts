import type { Migration } from "./migration.ts";

/** Every migration of the job file, oldest first. Version 1 is the first, so there is none yet. */
export const migrations: readonly Migration[] = [];
