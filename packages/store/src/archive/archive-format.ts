/** Name and version that an archive of jobs carries in its `contents.json`. */
export const archiveFormat = "pintle-archive";
export const archiveVersion = 1;

export const contentsName = "contents.json";
export const jobsFolder = "jobs/";
