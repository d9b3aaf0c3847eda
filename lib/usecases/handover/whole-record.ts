import { PACK_PARTS, type PackOptions } from '#lib/handover/pack-content.ts';

/** A record without choices: every part but notes private to coaches, of all time. */
export const WHOLE_RECORD: PackOptions = {
  period: { from: null, to: null },
  parts: PACK_PARTS.filter((part) => !['notes', 'fhir', 'films'].includes(part)),
  paper: 'A4',
  words: { why: '', forWhom: '', summary: null, next: null, manner: null },
};
