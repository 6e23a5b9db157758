const reasons: Readonly<Record<string, string>> = {
  ENOENT: "no such file or folder",
  ENOTDIR: "part of the path is not a folder",
  EISDIR: "a folder, not a file",
  EACCES: "no permission",
  EPERM: "no permission",
  EROFS: "a place that cannot be written to",
  ENOSPC: "no space left on the disk",
  EEXIST: "something of that name is there already",
  ENAMETOOLONG: "a name that is too long",
  ELOOP: "a link that leads back to itself",
  EMFILE: "too many files open at once",
};

/** Why the system refused, in plain words. */
export function reasonOf(error: unknown): string {
  const { code, message } = error as NodeJS.ErrnoException;
  return (code !== undefined ? reasons[code] : undefined) ?? message ?? String(error);
}
