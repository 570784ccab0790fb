/** Why the system would not read or write, in words: the one place where its error codes are worded. */

const EITHER: Readonly<Record<string, string>> = {
  EACCES: 'permission denied',
  EPERM: 'permission denied',
  ELOOP: 'symbolic links form a loop',
  ENAMETOOLONG: 'the name is too long',
};
const READING: Readonly<Record<string, string>> = {
  ...EITHER,
  ENOENT: 'file not found',
  ENOTDIR: 'file not found',
  EISDIR: 'it is a folder',
  ENXIO: 'it is a socket, not a file',
};
const WRITING: Readonly<Record<string, string>> = {
  ...EITHER,
  EROFS: 'the disk is read-only',
  EEXIST: 'there is a file where the folder should be',
  ENOTDIR: 'there is a file where the folder should be',
  EISDIR: 'there is a folder where the file should be',
  ENOENT: 'the folder cannot be created',
  ENOSPC: 'the disk is full',
  EFBIG: 'the file is larger than the system allows',
};

/** What an error of the system says; one that is not known in the system's own words, without the call and its paths. */
function wordsOf(thrown: unknown, words: Readonly<Record<string, string>>): string {
  const message = thrown instanceof Error ? thrown.message : String(thrown);
  const [code] = /^E[A-Z]+/.exec(message) ?? [];
  return (code === undefined ? undefined : words[code]) ?? message.replace(/, \w+( '.*')?$/, '');
}

export const whyNotRead = (thrown: unknown): string => wordsOf(thrown, READING);
export const whyNotWritten = (thrown: unknown): string => wordsOf(thrown, WRITING);
