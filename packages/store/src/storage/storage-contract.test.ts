import { IDBFactory } from "fake-indexeddb";
import { describe, expect, test } from "vitest";
import { openIndexedDbStorage } from "../indexeddb/indexed-db-storage.ts";
import type { JobStorage } from "./job-storage.ts";
import { createMemoryStorage } from "./memory-storage.ts";
import { storageContract } from "./storage-contract.ts";

const storages: { name: string; open: () => Promise<JobStorage> }[] = [
  { name: "memory", open: async () => createMemoryStorage() },
  {
    name: "IndexedDB, on an implementation in memory",
    open: async () => {
      const opened = await openIndexedDbStorage("jobs", new IDBFactory());
      if (!opened.ok) throw new Error(opened.message);
      return opened.storage;
    },
  },
];

describe.each(storages)("[T1] $name keeps the contract of a storage", ({ open }) => {
  test.each(storageContract)("$name", async ({ run }) => {
    await expect(run(await open())).resolves.toBeUndefined();
  });
});
