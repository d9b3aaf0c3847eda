import type { ClientHistory } from '#lib/domain/history.ts';
import { AppError } from '#lib/errors.ts';
import { parseHistory } from '#lib/schemas/history.ts';
import { oneLine, Unreadable } from './unreadable.ts';

/** One history from the bytes of a file or a line. Refuses with `where`, the path of each field and what it must be. */
export function readHistory(bytes: Uint8Array, where: string): ClientHistory {
  const value = jsonOf(bytes, where);
  try {
    return parseHistory(value);
  } catch (error) {
    if (!(error instanceof AppError)) throw error;
    const listed = Object.entries(error.fields).map(([path, message]) => `${path}: ${message}`);
    throw new Unreadable(oneLine(`${where} is not a history: ${listed.join('; ')}`));
  }
}

/** JSON of UTF-8 bytes; a byte order mark at the start is let go. */
export function jsonOf(bytes: Uint8Array, where: string): unknown {
  let text: string;
  try {
    text = new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    throw new Unreadable(`${where} is not UTF-8 text: save it as UTF-8`);
  }
  try {
    return JSON.parse(text);
  } catch (error) {
    throw new Unreadable(oneLine(`${where} is not JSON: ${(error as Error).message}`));
  }
}
