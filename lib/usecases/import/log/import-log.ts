import { createHash, randomUUID } from 'node:crypto';
import type { Actor } from '#lib/auth/actor.ts';
import { insertAudit } from '#lib/db/audit.ts';
import { insertAfterCheckIn, insertCheckIn, lockClient } from '#lib/db/check-ins.ts';
import { type TeamPg, withTeamPg } from '#lib/db/client.ts';
import { isConsentWithdrawn } from '#lib/db/consents.ts';
import { listHistoryRungs } from '#lib/db/history-rungs.ts';
import {
  deleteOfImport,
  insertLogImport,
  listCheckInDates,
  listLogImports,
  listRungIds,
  markOfImport,
} from '#lib/db/log-imports.ts';
import { rebuildRollups } from '#lib/db/rollups.ts';
import type { HistoryRung } from '#lib/domain/history.ts';
import { localDateOf } from '#lib/domain/local-date.ts';
import { UNDO_LOG_MS } from '#lib/domain/log-import.ts';
import { AppError } from '#lib/errors.ts';
import type { CheckInBody } from '#lib/schemas/check-in.ts';
import { guessLogColumns, type LogColumn } from '#lib/views/old-log/log-columns.ts';
import { assertMember } from '../../assert-member.ts';
import { readSheet, type Sheet } from '../read-sheet.ts';
import { bodiesOf } from './bodies-of.ts';
import { type DateOrder, dateOrdersOf } from './log-date.ts';
import { type LogDrill, logDrills } from './log-drills.ts';
import { type LogMapping, type LogProblem, shapeLog } from './shape-log.ts';

/** Own choices: some ten years of sets, one a row. */
export const LOG_BOUNDS = { rows: 20_000, bytes: 5 * 1024 * 1024, columns: 60 } as const;
const MOST_SHOWN = 100;
const EXAMPLES = 3;

export type LookedAt = {
  columns: { head: string; examples: string[]; means: LogColumn }[];
  dateOrders: DateOrder[];
  rows: number;
  drills: LogDrill[];
  rungs: { id: string; name: string }[];
};
export type CheckedLog = {
  days: { date: string; sets: number; told: string }[];
  sets: number;
  /** Days that have a check-in already: they stay as they are. */
  there: string[];
  /** The first hundred, and how many there are. */
  problems: LogProblem[];
  faulty: number;
};

/** What a log seems to hold: columns with examples, orders of dates that fit, drills with the rung each may mean. */
export function lookAtLog(
  actor: Actor,
  asked: { clientId: string; text: string; columns?: readonly LogColumn[] | undefined },
): Promise<LookedAt> {
  const sheet = readSheet(asked.text, LOG_BOUNDS);
  return withTeamPg(actor.scope, async (tx) => {
    await clientOf(tx, asked.clientId);
    const rungs = [...(await rungsOf(tx)).values()];
    const means = sheet.head.map(
      (_, at) => asked.columns?.[at] ?? guessLogColumns(sheet.head)[at] ?? 'leave',
    );
    const cellsOf = (at: number) => sheet.rows.map(({ cells }) => cells[at] ?? '');
    const drillAt = means.indexOf('drill');
    const valueAt = ['value', 'left', 'right']
      .map((one) => means.indexOf(one as LogColumn))
      .find((at) => at >= 0);
    return {
      columns: sheet.head.map((head, at) => ({
        head,
        examples: examplesOf(cellsOf(at)),
        means: means[at] ?? 'leave',
      })),
      dateOrders: dateOrdersOf(cellsOf(means.indexOf('date'))),
      rows: sheet.rows.length,
      drills: drillAt < 0 ? [] : logDrills(sheet.rows, { drill: drillAt, value: valueAt ?? -1 }, rungs),
      rungs: rungs
        .map(({ id, ladder, name }) => ({ id, name: `${ladder}: ${name}` }))
        .sort((a, b) => (a.name < b.name ? -1 : 1)),
    };
  });
}

function examplesOf(cells: readonly string[]): string[] {
  return [...new Set(cells.filter((cell) => cell !== ''))].slice(0, EXAMPLES);
}

type Asked = { clientId: string; text: string; mapping: LogMapping };

/** What a log would bring, and every row that cannot be read. Writes nothing. */
export async function checkLog(actor: Actor, asked: Asked, now: Date): Promise<CheckedLog> {
  const sheet = readSheet(asked.text, LOG_BOUNDS);
  const { bodies, there, problems } = await withTeamPg(actor.scope, (tx) => read(tx, asked, sheet, now));
  return {
    days: bodies.map(({ date, sets, effort, minutes, pain, words }) => ({
      date,
      sets: sets.length,
      told: [
        effort === null ? '' : `effort ${effort}`,
        minutes === null ? '' : `${minutes} min`,
        pain[0] ? `pain ${pain[0].value}` : '',
        words,
      ]
        .filter((word) => word !== '')
        .join(', '),
    })),
    sets: bodies.reduce((sum, { sets }) => sum + sets.length, 0),
    there,
    problems: problems.slice(0, MOST_SHOWN),
    faulty: problems.length,
  };
}

/**
 * Takes a log in, all of it or nothing: one check-in for each day that has none yet. The same log again finds its days
 * there and adds nothing. Checks run afterwards as after any check-in.
 */
export async function takeLog(
  actor: Actor,
  asked: Asked,
  now: Date,
): Promise<{ importId: string | null; days: number; there: number }> {
  const byId = assertMember(actor);
  const sheet = readSheet(asked.text, LOG_BOUNDS);
  return withTeamPg(actor.scope, async (tx) => {
    const { clientId } = asked;
    const { bodies, there, problems } = await read(tx, asked, sheet, now);
    assertNone(problems);
    const [first, last] = [bodies[0], bodies.at(-1)];
    if (!first || !last) return { importId: null, days: 0, there: there.length };
    const sets = bodies.reduce((sum, body) => sum + body.sets.length, 0);
    const about = { clientId, byId, days: bodies.length, sets, from: first.date, to: last.date, at: now };
    const importId = await insertLogImport(tx, about);
    for (const body of bodies) await insertCheckIn(tx, rowOf(body, clientId, now), body);
    await markOfImport(
      tx,
      importId,
      bodies.map(({ id }) => id),
    );
    await rebuildRollups(
      tx,
      clientId,
      bodies.map(({ date }) => date),
    );
    await insertAfterCheckIn(tx, { clientId, checkInId: last.id });
    await insertAudit(tx, actor, { action: 'log-imported', clientId, objectId: importId, fields: [] });
    return { importId, days: bodies.length, there: there.length };
  });
}

/** Takes a log back within a day; what was corrected or spoken of since stays. Said twice it is done once. */
export async function undoLog(
  actor: Actor,
  asked: { clientId: string; importId: string },
  now: Date,
): Promise<{ days: number; stayed: number }> {
  return withTeamPg(actor.scope, async (tx) => {
    const { clientId, importId } = asked;
    await clientOf(tx, clientId);
    const found = (await listLogImports(tx, clientId)).find(({ id }) => id === importId);
    if (!found) throw new AppError('not-found', 'This log is not here.');
    if (found.undoneAt) return { days: 0, stayed: 0 };
    if (now.getTime() - found.at.getTime() > UNDO_LOG_MS)
      throw new AppError('conflict', 'A log can be taken back within a day. Nothing was changed.');
    const { dates, stayed } = await deleteOfImport(tx, importId, now);
    await rebuildRollups(tx, clientId, dates);
    await insertAfterCheckIn(tx, { clientId, checkInId: importId, change: 'deleted' });
    await insertAudit(tx, actor, { action: 'log-import-undone', clientId, objectId: importId, fields: [] });
    return { days: dates.length, stayed };
  });
}

async function clientOf(tx: TeamPg, clientId: string): Promise<{ zone: string }> {
  const client = await lockClient(tx, clientId);
  if (!client) throw new AppError('not-found', 'This client is not here.');
  return client;
}

async function rungsOf(tx: TeamPg): Promise<Map<string, HistoryRung>> {
  const ids = await listRungIds(tx);
  return new Map((await listHistoryRungs(tx, ids)).map((rung) => [rung.id, rung]));
}

async function read(
  tx: TeamPg,
  { clientId, mapping }: Asked,
  sheet: Sheet,
  now: Date,
): Promise<{ bodies: CheckInBody[]; there: string[]; problems: LogProblem[] }> {
  const { zone } = await clientOf(tx, clientId);
  if (await isConsentWithdrawn(tx, clientId))
    throw new AppError(
      'conflict',
      'The client took their consent back: nothing is kept about their training.',
    );
  if (mapping.columns.length !== sheet.head.length)
    throw new AppError('invalid', 'The columns that were matched are not those of this log.', {
      fields: { 'mapping.columns': `must say what each of the ${sheet.head.length} columns is` },
    });
  if (mapping.columns.includes('pain') && !mapping.pain)
    throw new AppError('invalid', 'Say which place the pain column speaks of, or do not read it.', {
      fields: { 'mapping.pain': 'say which place it is' },
    });
  const rungs = await rungsOf(tx);
  const shaped = shapeLog(sheet, mapping, { rungs, today: localDateOf(now, zone) });
  const known = new Set(await listCheckInDates(tx, clientId));
  const there = shaped.days.filter(({ date }) => known.has(date)).map(({ date }) => date);
  const fresh = shaped.days.filter(({ date }) => !known.has(date));
  const { bodies, problems } = bodiesOf(fresh, {
    mapping,
    zone,
    rungs: [...rungs.values()],
    newId: randomUUID,
  });
  return { bodies, there, problems: [...shaped.problems, ...problems].sort((a, b) => a.line - b.line) };
}

function assertNone(problems: readonly LogProblem[]): void {
  const [first] = problems;
  if (!first) return;
  const more = problems.length > 1 ? ` ${problems.length} cells cannot be read.` : '';
  throw new AppError(
    'invalid',
    `Line ${first.line}: ${first.column} ${first.message}.${more} Nothing was taken.`,
    {
      fields: Object.fromEntries(
        problems
          .slice(0, MOST_SHOWN)
          .map(({ line, column, message }) => [`line ${line}`, `${column} ${message}`]),
      ),
    },
  );
}

/** It was told at noon of its day, as far as anybody knows. */
function rowOf(body: CheckInBody, clientId: string, now: Date) {
  const bodyHash = createHash('sha256').update(JSON.stringify(body)).digest('hex');
  return { ...body, clientId, bodyHash, sentAt: new Date(`${body.date}T12:00:00.000Z`), receivedAt: now };
}
