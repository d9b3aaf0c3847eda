import { readFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import type { ClientHistory } from '#lib/domain/history.ts';
import { isLocalDate } from '#lib/domain/local-date.ts';
import { type FindingsFormat, findingsWriter } from './findings-writer.ts';
import { findingsByNight, findingsOn, lastEvening, lastNight } from './history-findings.ts';
import { readHistory } from './read-history.ts';
import { readSettings } from './read-settings.ts';
import { splitLines } from './split-lines.ts';
import { oneLine, Unreadable, whyNotRead } from './unreadable.ts';

const HELP = `npm run -s check-history -- [FILE.json ...] [--as-of DATE] [--settings FILE] [--every-night] [--json | --table] [--keep-going]

Runs the checks over history files (the history.json of an export), or without FILE over standard input as JSON Lines:
one history a line, UTF-8, at most 64 MB. Needs no database; holds one history at a time, however many come.

  --as-of DATE      the evening to look from (YYYY-MM-DD); default: the last check-in. What is dated later is not looked at
  --settings FILE   JSON object of thresholds by id, laid over the defaults
  --every-night     look every evening from the first check-in to that date, each by what had been sent by 03:00 of the
                    next day in the client's zone; a reason is told when it begins. Default end: all check-ins are known
  --json            one JSON array; default: JSON Lines, one finding a line
  --table           a table for people
  --keep-going      after a history that cannot be read, go on with the next

Ends with 0 when nothing was found, 1 when something was, 2 when something cannot be read or no history came. It says
what, where and how to mend it in one line on standard error and stops there; with --keep-going it goes on, and still
ends with 2.
Formats (JSON Schema 2020-12): a history lib/handover/history.schema.json, a finding lib/handover/finding.schema.json.
`;

const MAX_BYTES = 64 * 1024 * 1024;
const HISTORY_END = 'lay it on one line, e.g. with jq -c .';

function parsed(args: string[]) {
  return parseArgs({
    args,
    allowPositionals: true,
    options: {
      'as-of': { type: 'string' },
      settings: { type: 'string' },
      'every-night': { type: 'boolean', default: false },
      json: { type: 'boolean', default: false },
      table: { type: 'boolean', default: false },
      'keep-going': { type: 'boolean', default: false },
      help: { type: 'boolean', default: false },
    },
  });
}

function options(args: string[]) {
  let given: ReturnType<typeof parsed>;
  try {
    given = parsed(args);
  } catch (error) {
    throw new Unreadable(oneLine(`${(error as Error).message}; --help lists the options`));
  }
  const { values, positionals } = given;
  const asOf = values['as-of'];
  if (asOf !== undefined && !isLocalDate(asOf))
    throw new Unreadable(oneLine(`--as-of "${asOf}" is not a date: write it as 2026-11-24`));
  if (values.json && values.table) throw new Unreadable('--json and --table: choose one');
  const format: FindingsFormat = values.json ? 'json' : values.table ? 'table' : 'lines';
  return { ...values, asOf, format, files: positionals };
}

/** What is to be read, one history at a time: its name for messages, and a function that reads it or refuses. */
type Source = { where: string; read: () => ClientHistory };

async function* sourcesOf(files: readonly string[]): AsyncGenerator<Source> {
  for (const file of files) yield { where: file, read: () => readHistory(bytesOf(file), file) };
  if (files.length > 0) return;
  if (process.stdin.isTTY)
    throw new Unreadable('nothing to read: name a FILE or pipe histories in; --help says more');
  let given = 0;
  for await (const { number, bytes } of splitLines(process.stdin, MAX_BYTES)) {
    const where = `line ${number}`;
    if (bytes !== 'too-long' && isBlank(bytes)) continue;
    given += 1;
    yield { where, read: () => readHistory(bounded(bytes, where), where) };
  }
  if (given === 0) throw new Unreadable('standard input holds no history: one a line is asked for');
}

/** Spaces, tabs, line ends and a byte order mark only. */
function isBlank(bytes: Uint8Array): boolean {
  return bytes.length < 1_000 && new TextDecoder().decode(bytes).trim() === '';
}

function bytesOf(file: string): Uint8Array {
  try {
    return bounded(readFileSync(file), file);
  } catch (error) {
    if (error instanceof Unreadable) throw error;
    throw new Unreadable(oneLine(`${file} cannot be read: ${whyNotRead(error)}`));
  }
}

function bounded(bytes: Uint8Array | 'too-long', where: string): Uint8Array {
  if (bytes === 'too-long' || bytes.length > MAX_BYTES)
    throw new Unreadable(`${where} is longer than 64 MB: one history is asked for`);
  return bytes;
}

let found = 0;

async function main(args: string[]): Promise<number> {
  const asked = options(args);
  if (asked.help) {
    process.stdout.write(HELP);
    return 0;
  }
  const limits = readSettings(asked.settings);
  const writer = findingsWriter(process.stdout, asked.format);
  const look = (history: ClientHistory) => {
    const last = asked.asOf ?? (asked['every-night'] ? lastNight(history) : lastEvening(history));
    if (last === undefined) return []; // no check-in and no date: nothing to look from
    return asked['every-night'] ? findingsByNight(history, last, limits) : findingsOn(history, last, limits);
  };
  let refused = 0;
  let ended = false;
  try {
    for await (const { where, read } of sourcesOf(asked.files)) {
      try {
        const rows = look(read());
        found += rows.length;
        await writer.write(rows);
      } catch (error) {
        if (!asked['keep-going']) throw toldOf(error, where);
        refused += 1;
        process.stderr.write(`${toldOf(error, where).message}\n`);
      }
    }
    ended = refused === 0;
  } finally {
    await writer.end(ended);
  }
  return refused > 0 ? 2 : found > 0 ? 1 : 0;
}

function toldOf(error: unknown, where: string): Unreadable {
  if (!(error instanceof Unreadable))
    return new Unreadable(oneLine(`${where}: the checks stopped: ${String(error)}`));
  const cut = where.startsWith('line ') && error.message.includes('is not JSON');
  return cut ? new Unreadable(`${error.message}; ${HISTORY_END}`) : error;
}

// Whoever reads has enough (`| head`): end quietly.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code !== 'EPIPE') process.stderr.write(`${oneLine(error.message)}\n`);
  process.exit(error.code === 'EPIPE' ? Math.min(found, 1) : 2);
});

main(process.argv.slice(2)).then(
  (code) => {
    process.exitCode = code;
  },
  (error: unknown) => {
    const message = error instanceof Unreadable ? error.message : `standard input: ${whyNotRead(error)}`;
    process.stderr.write(`${message}\n`);
    process.exitCode = 2;
  },
);
