import type { PackPart } from './pack-content.ts';

/** What each part of a pack is, for whoever chooses. */
export const PART_LABELS: Readonly<Record<PackPart, string>> = {
  tables: 'Tables (CSV)',
  history: 'The lossless record: another team can take the client in from it',
  calendar: 'The plan as a calendar',
  stills: 'Pictures that were sent, or taken from films',
  films: 'Films, as they are kept',
  fhir: 'Pain as FHIR, for a clinic’s program',
  notes: 'Notes private to coaches',
};
