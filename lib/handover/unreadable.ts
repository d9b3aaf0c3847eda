/** What cannot be read: said in one line that names the place and the fix, without a stack. */
export class Unreadable extends Error {}

/** One line for a terminal: line ends and control characters of somebody's file become spaces. */
export function oneLine(text: string): string {
  return text
    .replace(/[\p{Cc}\u2028\u2029]+/gu, ' ')
    .replace(/ {2,}/g, ' ')
    .trim();
}

const IN_WORDS: Record<string, string> = {
  ENOENT: 'there is no such file',
  EISDIR: 'it is a folder; name a file in it',
  EACCES: 'this user may not read it',
};

/** Why a file could not be read, in words. */
export function whyNotRead(error: unknown): string {
  const code = error instanceof Error && 'code' in error ? String(error.code) : '';
  return IN_WORDS[code] ?? oneLine(error instanceof Error ? error.message : String(error));
}
