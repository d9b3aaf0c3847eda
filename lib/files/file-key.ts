const ID = '[0-9a-f-]{36}';
/** `team/thing.ext` or a piece of one, `team/thing.12.part`: a key can point at nothing outside the store. */
const KEY = new RegExp(`^${ID}/${ID}\\.(?:[0-9]{1,3}\\.part|[a-z][a-z0-9]{2,3})$`);
const STEM = new RegExp(`^${ID}/${ID}$`);

export function assertKey(key: string): void {
  if (!KEY.test(key)) throw new Error('a key of a file is not "team id/thing id.ext"');
}

export function assertStem(stem: string): void {
  if (!STEM.test(stem)) throw new Error('a stem of files is not "team id/thing id"');
}

/** What every key of one thing begins with. */
export function stemOf(key: string): string {
  return key.slice(0, key.indexOf('.'));
}
