import type { Writable } from 'node:stream';
import { z } from 'zod';
import { localDateOf } from '#lib/domain/local-date.ts';
import { packRecordSchema } from '#lib/schemas/pack-record.ts';
import { type BagFile, type BagWritten, writeBag } from './bag.ts';
import { planAsCalendar } from './calendar.ts';
import { consentText } from './consent-file.ts';
import { csvwMetadata } from './csvw.ts';
import { painAsFhir } from './fhir.ts';
import { historyJsonSchema } from './history-json-schema.ts';
import { jsonPieces } from './json-pieces.ts';
import type { PackContent, PackOptions } from './pack-content.ts';
import { type PackedPeriod, packedPeriod } from './pack-report.ts';
import { reportPdf } from './pdf/report-pdf.ts';
import { recordWithin } from './period.ts';
import { readmeText } from './readme.ts';
import { reportOf } from './report/report.ts';
import { reportHtml } from './report/report-html.ts';
import { recordTables } from './tables.ts';

/**
 * A handover pack, written into `out` as a zip while it is made (BagIt, RFC 8493). The one way in for coaches, links and a
 * client's own data. Rejects, with `out` destroyed, when anything breaks: a broken pack never looks whole.
 */
export async function writePack(
  content: PackContent,
  options: PackOptions,
  out: Writable,
): Promise<BagWritten> {
  const packed = await packedPeriod(content, options);
  const { about, made } = content;
  const { client } = packed.history;
  return writeBag(filesOf(content, options, packed), infoOf(), out);

  function infoOf() {
    return {
      made,
      facts: [
        ['Source-Organization', about.team],
        ['Contact-Name', about.madeBy],
        [
          'External-Description',
          `Training record of one client, ${packed.period.from} to ${packed.period.to}`,
        ],
        ['External-Identifier', client.id],
        ['Bag-Software-Agent', 'Plumbline'],
      ],
    } as const;
  }
}

function filesOf(content: PackContent, options: PackOptions, packed: PackedPeriod): BagFile[] {
  const { made } = content;
  const has = (part: PackOptions['parts'][number]) => options.parts.includes(part);
  const report = reportOf(packed.report);
  const text = (path: string, words: string): BagFile => ({ path, pieces: () => [words] });
  return [
    text(
      'README.txt',
      readmeText({
        made: made.toISOString(),
        zone: packed.history.client.zone,
        period: packed.period,
        parts: options.parts,
      }),
    ),
    { path: 'report.pdf', pieces: () => reportPdf(report, options.paper) },
    text('report.html', reportHtml(report, options.paper)),
    text('consent.txt', consentText(packed.report)),
    ...(has('tables') ? tableFiles(content, options, packed) : []),
    ...(has('history') ? historyFiles(content, packed) : []),
    ...(has('calendar')
      ? [
          text(
            'plan.ics',
            planAsCalendar(packed.history, { today: localDateOf(made, packed.history.client.zone), made }),
          ),
        ]
      : []),
    ...(has('fhir') ? [{ path: 'fhir-bundle.json', pieces: () => painAsFhir(packed.history, made) }] : []),
    ...(has('stills') ? stillFiles(content, packed, options.period.from ?? '') : []),
    ...(has('films') ? filmFiles(content, packed) : []),
  ];
}

function tableFiles(content: PackContent, options: PackOptions, packed: PackedPeriod): BagFile[] {
  const tables = recordTables({
    record: recordWithin(content.record, packed.rows),
    days: packed.days,
    weeks: packed.weeks,
    rungs: packed.history.rungs,
    zone: packed.history.client.zone,
    notes: options.parts.includes('notes'),
  });
  return [
    ...tables.map(({ name, pieces }) => ({ path: `tables/${name}`, pieces })),
    { path: 'csv-metadata.json', pieces: () => [`${JSON.stringify(csvwMetadata(tables), null, 1)}\n`] },
  ];
}

function historyFiles(content: PackContent, packed: PackedPeriod): BagFile[] {
  const schema = (made: Record<string, unknown>) => [`${JSON.stringify(made, null, 1)}\n`];
  return [
    { path: 'history.json', pieces: () => jsonPieces(packed.history) },
    { path: 'history.schema.json', pieces: () => schema(historyJsonSchema()) },
    {
      path: 'record.json',
      pieces: () => recordPieces(content.rows, packed.rows),
    },
    { path: 'record.schema.json', pieces: () => schema(recordJsonSchema()) },
  ];
}

async function* recordPieces(
  tables: PackContent['rows'],
  period: { from: string | null; to: string },
): AsyncGenerator<string> {
  yield `{\n "formatVersion": 1,\n "period": ${JSON.stringify(period)}`;
  for (const { name, rows } of tables) {
    yield `,\n ${JSON.stringify(name)}: [`;
    let first = true;
    for await (const batch of rows()) {
      if (batch.length === 0) continue;
      yield `${first ? '' : ','}\n  ${batch.map((row) => JSON.stringify(row)).join(',\n  ')}`;
      first = false;
    }
    yield first ? ']' : '\n ]';
  }
  yield '\n}\n';
}

/** The JSON Schema 2020-12 of record.json, made from the Zod schema. */
function recordJsonSchema(): Record<string, unknown> {
  return {
    ...z.toJSONSchema(packRecordSchema, { target: 'draft-2020-12', io: 'input' }),
    $id: 'urn:plumbline:record:1',
    title: 'Plumbline client record, format version 1',
    description:
      'Every row kept about one client, by table, with ids. Dates are local, instants carry their offset.',
  };
}

function filmFiles({ films }: PackContent, { period }: PackedPeriod): BagFile[] {
  return films
    .filter(({ filmedOn }) => filmedOn >= period.from && filmedOn <= period.to)
    .map(({ id, filmedOn, open }) => ({ path: `films/${filmedOn}-${id}.mp4`, pieces: open }));
}

/** `from`: of the rows in record.json, which may be older than the first day that is known. */
function stillFiles(content: PackContent, packed: PackedPeriod, from: string): BagFile[] {
  const { to } = packed.period;
  const ofFilms = content.filmStills.filter(({ filmedOn }) => filmedOn >= from && filmedOn <= to);
  const ids = [
    ...packed.report.record.questions.flatMap((question) => question.stills),
    ...ofFilms.map(({ id }) => id),
  ];
  return ids.map((id) => ({
    path: `stills/${id}.jpg`,
    pieces: async () => {
      const bytes = await content.picture(id).read();
      return bytes && [bytes];
    },
  }));
}
