import { Readable } from 'node:stream';
import { ZipArchive } from 'archiver';
import type { ClientHistory } from '#lib/domain/history.ts';
import type { ClientRecord, LoadDay, RecordSource } from '#lib/domain/record.ts';
import { historyJsonSchema } from './history-json-schema.ts';
import { readmeText } from './readme.ts';
import { held } from './table.ts';
import { recordTables } from './tables.ts';
import { weeksOf } from './weeks.ts';

/** A picture of the record; read when its turn comes, undefined when it is there no more. */
export type ExportPicture = { name: string; read: () => Promise<Uint8Array | undefined> };
export type ExportContent = {
  history: ClientHistory;
  record: ClientRecord;
  days: LoadDay[];
  pictures: ExportPicture[];
  made: Date;
};

/** One client's record as a zip, made piece by piece while it is read. */
export function exportZip(content: ExportContent): Readable {
  const zip = new ZipArchive({ zlib: { level: 6 } });
  const { history, record } = content;
  const dates = record.checkIns.map((one) => one.date);
  const add = (name: string, body: string | Readable) => zip.append(body, { name, date: content.made });
  add(
    'README.txt',
    readmeText({
      made: content.made.toISOString(),
      zone: history.client.zone,
      from: dates.at(0) ?? null,
      until: dates.at(-1) ?? null,
    }),
  );
  add('history.json', `${JSON.stringify(history, null, 1)}\n`);
  add('history.schema.json', `${JSON.stringify(historyJsonSchema(), null, 2)}\n`);
  for (const { name, pieces } of recordTables({
    record: heldRecord(record),
    days: content.days,
    weeks: weeksOf(history, content.days, dates.at(-1) ?? content.made.toISOString().slice(0, 10)),
    rungs: history.rungs,
    zone: history.client.zone,
    notes: false,
  })) {
    const source = Readable.from(pieces());
    // The archive would wait for ever for a table that broke: then the download breaks too.
    source.on('error', (error) => zip.destroy(error));
    add(name, source);
  }
  for (const { name, read } of content.pictures) {
    const source = Readable.from(bytesOf(read));
    source.on('error', (error) => zip.destroy(error));
    add(name, source);
  }
  zip.finalize().catch((error: Error) => zip.destroy(error));
  return zip;
}

function heldRecord(record: ClientRecord): RecordSource {
  return Object.fromEntries(
    Object.entries(record).map(([name, rows]) => [name, held<unknown>(rows)]),
  ) as RecordSource;
}

async function* bytesOf(read: ExportPicture['read']): AsyncGenerator<Buffer> {
  const bytes = await read();
  if (bytes) yield Buffer.from(bytes);
}

/** A file name that says nothing about the person. */
export function exportFileName(clientId: string, localDate: string): string {
  return `record-${clientId.slice(0, 8)}-${localDate}.zip`;
}
