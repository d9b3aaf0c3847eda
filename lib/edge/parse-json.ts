import { AppError } from '#lib/errors.ts';

const MAX_DEPTH = 32;
const REFUSED_KEYS = new Set(['__proto__', 'constructor', 'prototype']);

/** JSON as we accept it: at most 32 levels, no key twice, no keys that reach into objects, only well-formed text. */
export function parseJson(text: string): unknown {
  assertShape(text);
  try {
    return JSON.parse(text);
  } catch {
    throw new AppError('invalid', 'The body is not JSON: send it as JSON text in UTF-8.');
  }
}

/** Walks the text once, without recursion, before anything is built from it. */
function assertShape(text: string): void {
  const open: (Set<string> | null)[] = [];
  let keyIsNext = false;
  for (let at = 0; at < text.length; at += 1) {
    const sign = text[at];
    if (sign === '{' || sign === '[') {
      open.push(sign === '{' ? new Set() : null);
      if (open.length > MAX_DEPTH)
        throw new AppError('invalid', `The body is nested deeper than ${MAX_DEPTH} levels.`);
      keyIsNext = sign === '{';
    } else if (sign === '}' || sign === ']') {
      open.pop();
      keyIsNext = false;
    } else if (sign === ',') {
      keyIsNext = open.at(-1) instanceof Set;
    } else if (sign === '"') {
      const end = endOfString(text, at);
      const value = stringAt(text, at, end);
      const keys = open.at(-1);
      if (keyIsNext && keys) assertKey(value, keys);
      keyIsNext = false;
      at = end;
    }
  }
}

function endOfString(text: string, start: number): number {
  let at = start + 1;
  while (at < text.length && text[at] !== '"') at += text[at] === '\\' ? 2 : 1;
  return at;
}

function stringAt(text: string, start: number, end: number): string {
  let value: string;
  try {
    value = JSON.parse(text.slice(start, end + 1)) as string;
  } catch {
    throw new AppError('invalid', 'The body is not JSON: a text in it is not closed or not escaped.');
  }
  assertText(value);
  return value;
}

function assertKey(key: string, keys: Set<string>): void {
  if (REFUSED_KEYS.has(key))
    throw new AppError('invalid', `The body has a field that is not known: "${key}". Leave it out.`);
  if (keys.has(key))
    throw new AppError('invalid', `The body has the field "${key.slice(0, 60)}" twice. Send it once.`);
  keys.add(key);
}

/** PostgreSQL keeps no null byte, and half a character pair would be stored as something else. */
export function assertText(value: string): void {
  if (value.includes('\0')) throw new AppError('invalid', 'A text holds a null byte. Take it out.');
  if (!value.isWellFormed())
    throw new AppError('invalid', 'A text holds half of a character pair. Type that character again.');
}
