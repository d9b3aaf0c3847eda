import { createHash } from 'node:crypto';
import { canonicalJson } from '#lib/domain/canonical-json.ts';

/** A short text that differs when a ladder, or what an edit of it would touch, differs. */
export function printOf(value: unknown): string {
  return createHash('sha256').update(canonicalJson(value)).digest('base64url').slice(0, 22);
}
