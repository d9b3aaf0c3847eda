import { readFileSync } from 'node:fs';
import { DEFAULT_LIMITS, isLimitId, type Limits, limitsWith } from '#lib/checks/thresholds.ts';
import { jsonOf } from './read-history.ts';
import { oneLine, Unreadable, whyNotRead } from './unreadable.ts';

/** The thresholds of a settings file laid over the defaults; without a file the defaults. */
export function readSettings(file: string | undefined): Limits {
  if (file === undefined) return DEFAULT_LIMITS;
  const where = `--settings ${file}`;
  let bytes: Buffer;
  try {
    bytes = readFileSync(file);
  } catch (error) {
    throw new Unreadable(oneLine(`${where} cannot be read: ${whyNotRead(error)}`));
  }
  const given = jsonOf(bytes, where);
  if (typeof given !== 'object' || given === null || Array.isArray(given))
    throw new Unreadable(`${where} must be an object such as {"painHigh.from": 6}`);
  const over: Record<string, number> = {};
  for (const [id, value] of Object.entries(given)) {
    if (!isLimitId(id))
      throw new Unreadable(
        oneLine(`${where}: there is no threshold "${id}"; lib/checks/thresholds lists them`),
      );
    if (typeof value !== 'number' || !Number.isFinite(value) || value < 0)
      throw new Unreadable(`${where}: ${id} must be a number, 0 or more`);
    over[id] = value;
  }
  return limitsWith(over);
}
