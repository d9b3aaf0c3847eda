import { createReadStream, readFileSync } from 'node:fs';
import { createInterface } from 'node:readline';
import { parseArgs } from 'node:util';
import { runChecks } from '#lib/checks/run.ts';
import { DEFAULT_LIMITS, isLimitId, type Limits, limitsWith } from '#lib/checks/thresholds.ts';
import type { Flagged } from '#lib/domain/finding.ts';
import type { ClientHistory } from '#lib/domain/history.ts';
import { addDays, isLocalDate } from '#lib/domain/local-date.ts';
import { parseHistory } from '#lib/schemas/history.ts';

const HELP = `npm run -s check-history -- [FILE.json] [--as-of DATE] [--settings FILE] [--every-night] [--table]

Runs the checks over one history file (the history.json of an export), or over many on standard input as
JSON Lines, one history a line. Needs no database. Writes one JSON object a line, or a table.

  --as-of DATE      the evening to look from (YYYY-MM-DD); default: the last check-in
  --settings FILE   JSON object of thresholds by id, laid over the defaults
  --every-night     look every evening from the first check-in to that date; a reason is told when it begins
  --table           a table for people

Ends with 0 when nothing was found, 1 when something was, 2 when something cannot be read (it says what and where).
The format of a history: lib/handover/history.schema.json (JSON Schema 2020-12).
`;

/** What cannot be read: said in one line, without a stack. */
class Unreadable extends Error {}

type Row = Pick<Flagged, 'kind' | 'level' | 'tier' | 'sentence' | 'evidence'> & {
  client: string;
  date: string;
  subject: string;
};

function rowsOf(history: ClientHistory, date: string, limits: Limits): Row[] {
  const asOf = { date, instant: `${addDays(date, 1)}T02:00:00.000Z` };
  return runChecks(history, asOf, limits).flatMap((outcome) =>
    outcome.status === 'flagged'
      ? [
          {
            client: history.client.id,
            date,
            kind: outcome.kind,
            level: outcome.level,
            tier: outcome.tier,
            subject: outcome.subject.label,
            sentence: outcome.sentence.replaceAll('**', ''),
            evidence: outcome.evidence,
          },
        ]
      : [],
  );
}

/** Every evening; each reason once, on the evening it begins. */
function everyNight(history: ClientHistory, last: string, limits: Limits): Row[] {
  const first = history.checkIns.map((one) => one.date).sort()[0] ?? last;
  const rows: Row[] = [];
  let before = new Set<string>();
  for (let date = first; date <= last; date = addDays(date, 1)) {
    const tonight = rowsOf(history, date, limits);
    rows.push(...tonight.filter((row) => !before.has(`${row.kind} ${row.subject}`)));
    before = new Set(tonight.map((row) => `${row.kind} ${row.subject}`));
  }
  return rows;
}

function read(text: string, where: string): ClientHistory {
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch (error) {
    throw new Unreadable(`${where} is not JSON: ${(error as Error).message}`);
  }
  try {
    return parseHistory(value);
  } catch (error) {
    throw new Unreadable(`${where} is not a history: ${(error as Error).message}`);
  }
}

function settingsOf(file: string | undefined): Limits {
  if (file === undefined) return DEFAULT_LIMITS;
  let given: unknown;
  try {
    given = JSON.parse(readFileSync(file, 'utf8'));
  } catch (error) {
    throw new Unreadable(`--settings ${file} cannot be read: ${(error as Error).message}`);
  }
  const over: Record<string, number> = {};
  for (const [id, value] of Object.entries(given ?? {})) {
    if (!isLimitId(id)) throw new Unreadable(`--settings ${file}: there is no threshold "${id}"`);
    if (typeof value !== 'number' || !Number.isFinite(value))
      throw new Unreadable(`--settings ${file}: ${id} must be a number`);
    over[id] = value;
  }
  return limitsWith(over);
}

async function main(args: string[]): Promise<number> {
  const { values, positionals } = parseArgs({
    args,
    allowPositionals: true,
    options: {
      'as-of': { type: 'string' },
      settings: { type: 'string' },
      'every-night': { type: 'boolean', default: false },
      table: { type: 'boolean', default: false },
      help: { type: 'boolean', default: false },
    },
  });
  if (values.help) {
    process.stdout.write(HELP);
    return 0;
  }
  const asked = values['as-of'];
  if (asked !== undefined && !isLocalDate(asked))
    throw new Unreadable(`--as-of "${asked}" is not a date: write it as 2026-11-24`);
  const limits = settingsOf(values.settings);
  let found = 0;
  const look = (history: ClientHistory) => {
    const last =
      asked ??
      history.checkIns
        .map((one) => one.date)
        .sort()
        .at(-1);
    if (last === undefined) return; // no check-in and no date: nothing to look from
    const rows = values['every-night'] ? everyNight(history, last, limits) : rowsOf(history, last, limits);
    found += rows.length;
    for (const row of rows) process.stdout.write(`${values.table ? tableLine(row) : JSON.stringify(row)}\n`);
  };
  const [file] = positionals;
  if (file !== undefined) {
    let text: string;
    try {
      text = readFileSync(file, 'utf8');
    } catch (error) {
      throw new Unreadable(`${file} cannot be read: ${(error as Error).message}`);
    }
    look(read(text, file));
  } else {
    let number = 0;
    for await (const line of createInterface({
      input: createReadStream('', { fd: 0 }),
      crlfDelay: Number.POSITIVE_INFINITY,
    })) {
      number += 1;
      if (line.trim() !== '') look(read(line, `line ${number}`));
    }
  }
  return found > 0 ? 1 : 0;
}

function tableLine(row: Row): string {
  return [
    row.date,
    row.client.slice(0, 12).padEnd(12),
    (row.tier ?? 'note').padEnd(10),
    row.kind.padEnd(18),
    row.sentence,
  ].join('  ');
}

main(process.argv.slice(2)).then(
  (code) => {
    process.exitCode = code;
  },
  (error: Error) => {
    process.stderr.write(
      `${error instanceof Unreadable || 'code' in error ? error.message : (error.stack ?? error.message)}\n`,
    );
    process.exitCode = 2;
  },
);
