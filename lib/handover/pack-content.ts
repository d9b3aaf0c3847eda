import type { Limits } from '#lib/checks/thresholds.ts';
import type { ClientHistory } from '#lib/domain/history.ts';
import type { Batches, RecordSource } from '#lib/domain/record.ts';
import type { Paper } from './report/blocks.ts';
import type { PackAbout, PackWords } from './report/input.ts';

/** What can be left out of a pack. The report, the consents and README.txt always come. */
export const PACK_PARTS = ['tables', 'history', 'calendar', 'stills', 'films', 'fhir', 'notes'] as const;
export type PackPart = (typeof PACK_PARTS)[number];

/** `period.to` null: up to the newest day. */
export type PackOptions = {
  period: { from: string | null; to: string | null };
  parts: readonly PackPart[];
  paper: Paper;
  words: PackWords;
};

/** A picture of the record; read when its turn comes, undefined when it is there no more. */
export type PackPicture = { id: string; read: () => Promise<Uint8Array | undefined> };

/** A film of the record, as it is read; undefined when it is there no more. */
export type PackFilm = {
  id: string;
  filmedOn: string;
  bytes: number;
  open: () => Promise<AsyncIterable<Uint8Array> | undefined>;
};

/**
 * Everything a pack is made from, whole; `writePack` takes the period and the parts out of it. `record` and `rows` are read
 * batch by batch, as long as whoever opened them keeps them open.
 */
export type PackContent = {
  history: ClientHistory;
  record: RecordSource;
  /** Rows of record.json by table, of the period already. */
  rows: readonly { name: string; rows: Batches<unknown> }[];
  limits: Limits;
  about: PackAbout;
  picture: (id: string) => PackPicture;
  /** Stills that were taken from films, with the day of the film; those of questions stand in the record. */
  filmStills: readonly { id: string; filmedOn: string }[];
  /** Films that are still kept. */
  films: readonly PackFilm[];
  made: Date;
};
