import { randomUUID } from 'node:crypto';
import pg from 'pg';
import { closeDb, withTeamPg } from '#lib/db/client.ts';
import { copyLibrary } from '#lib/db/library.ts';
import { addDays } from '#lib/domain/local-date.ts';
import { closeQueues } from '#lib/jobs/queue.ts';
import { anotherPhone, aTraining, type Phone } from '#tests/integration/check-in/arrange.ts';
import { makeTestTeam } from '#tests/integration/support/database.ts';
import { cookieFor } from '#tests/integration/support/signing-in.ts';
import { missingBuild } from './board/board.bench.ts';
import { type Product, startProduct } from './board/product.ts';
import { type Bench, medianOf } from './harness.ts';

const CLIENTS = 60;
const AT_ONCE = 8;
const SETS = 12;
const ROUNDS = 5;
/** A client may send thirty an hour: five rounds of four, and one that is not counted. */
const EACH_A_ROUND = 4;
const TABLES = ['check_in', 'check_in_set', 'pain_score', 'day_rollup', 'outbox'] as const;

type Sender = { phone: Phone; cookie: string };
type Row = Record<string, unknown>;
type Written = { table: string; rows: Row[] }[];

/** Check-ins a second over HTTP, as phones send them, over the same rows written by a plain client. */
export const submitBench: Bench = {
  name: 'submit',
  what: 'check-ins of 12 sets a second over HTTP, over the same rows by a plain pg client; needs a build',
  missing: missingBuild,
  run: async (scale) => {
    const product = await startProduct();
    try {
      Object.assign(process.env, product.environment); // for the modules of the product that are called from here
      const senders = await makeSenders(Math.max(AT_ONCE, Math.round(CLIENTS * scale)));
      const today = new Date().toISOString().slice(0, 10);
      await submitRound(product, senders, today, 0);
      const written = await rowsOfOne(product.db, today);
      const rows = written.reduce((sum, { rows: those }) => sum + those.length, 0);
      const writers = await openWriters(product);
      await writeRound(writers, written, senders, 0);
      await product.db.query('vacuum analyze'); // a minute later the server does it by itself, and plans anew for both
      const rounds: { value: number; reference: number }[] = [];
      for (let turn = 1; turn <= ROUNDS; turn += 1) {
        const plain = () => writeRound(writers, written, senders, turn);
        const reference = turn % 2 === 0 ? await plain() : undefined;
        const value = await submitRound(product, senders, today, turn);
        rounds.push({ value, reference: reference ?? (await plain()) });
      }
      await Promise.all(writers.map((writer) => writer.end()));
      return [
        {
          name: 'submit',
          value: medianOf(rounds.map(({ value }) => value)),
          unit: 'check-ins a second',
          reference: medianOf(rounds.map(({ reference }) => reference)),
          ratio: medianOf(rounds.map(({ value, reference }) => value / reference)),
          better: 'higher',
          must: '0.3x',
          aim: '0.6x',
          sizes: `${SETS} sets, ${rows} rows a check-in, ${senders.length} clients, ${senders.length * EACH_A_ROUND} check-ins a round, ${AT_ONCE} at once, ${ROUNDS} rounds, one web process`,
        },
      ];
    } finally {
      await closeQueues();
      await closeDb();
      await product.stop();
    }
  },
};

async function makeSenders(many: number): Promise<Sender[]> {
  const team = await makeTestTeam('Senders');
  const { rungIds } = await withTeamPg(team.scope, (tx) => copyLibrary(tx));
  const senders: Sender[] = [];
  for (let at = 0; at < many; at += 1) {
    const phone = { team, rungs: rungIds, ...(await anotherPhone(team, `Sender ${at}`)) };
    senders.push({ phone, cookie: await cookieFor(phone.actor.userId) });
  }
  return senders;
}

/** Check-ins a second: each client sends some days, one after the other, eight clients at once as in an evening. */
async function submitRound(
  { origin }: Product,
  senders: Sender[],
  today: string,
  turn: number,
): Promise<number> {
  const bodies = daysOf(turn).flatMap((back) =>
    senders.map(({ phone, cookie }) => ({
      cookie,
      body: JSON.stringify(aCheckIn(phone, addDays(today, -back))),
    })),
  );
  return perSecond(bodies, async ({ cookie, body }) => {
    const headers = { cookie, origin, 'content-type': 'application/json' };
    const answer = await fetch(`${origin}/api/check-ins`, { method: 'POST', headers, body });
    if (answer.status !== 201)
      throw new Error(`a check-in was answered ${answer.status}: ${await answer.text()}`);
    await answer.arrayBuffer();
  });
}

const daysOf = (turn: number) => Array.from({ length: EACH_A_ROUND }, (_, at) => turn * EACH_A_ROUND + at);

function aCheckIn(phone: Phone, date: string) {
  const rungId = phone.rungs.get('H3.4') ?? '';
  const sets = Array.from({ length: SETS }, (_, at) => ({
    rungId,
    side: 'both' as const,
    planned: 20,
    how: 'typed' as const,
    index: at + 1,
    value: 14 + (at % 7),
  }));
  const pain = [
    {
      region: 'wrist-back' as const,
      side: 'left' as const,
      moment: 'during' as const,
      value: 1,
      kind: 'joint' as const,
      usual: true,
    },
  ];
  return aTraining(phone, { date, zone: 'UTC', sets, pain });
}

async function perSecond<Item>(
  items: Item[],
  work: (item: Item, lane: number) => Promise<void>,
): Promise<number> {
  let next = 0;
  const start = performance.now();
  const lane = async (_: unknown, at: number) => {
    for (let item = items[next++]; item; item = items[next++]) await work(item, at);
  };
  await Promise.all(Array.from({ length: AT_ONCE }, lane));
  return items.length / ((performance.now() - start) / 1000);
}

/** The rows that one check-in of the round before became. */
async function rowsOfOne(db: pg.Client, today: string): Promise<Written> {
  const { rows } = await db.query<{ id: string; client_id: string }>(
    'select id, client_id from check_in where date = $1 order by id limit 1',
    [today],
  );
  const [one] = rows;
  if (!one) throw new Error('no check-in was kept');
  const where: Record<(typeof TABLES)[number], [string, unknown[]]> = {
    check_in: ['id = $1', [one.id]],
    check_in_set: ['check_in_id = $1', [one.id]],
    pain_score: ['check_in_id = $1', [one.id]],
    day_rollup: ['client_id = $1 and date = $2', [one.client_id, today]],
    outbox: ['client_id = $1 order by created_at limit 1', [one.client_id]],
  };
  const written: Written = [];
  for (const table of TABLES) {
    const [condition, values] = where[table];
    written.push({
      table,
      rows: (await db.query<Row>(`select * from ${table} where ${condition}`, values)).rows,
    });
  }
  return written;
}

async function openWriters({ environment }: Product): Promise<pg.Client[]> {
  return Promise.all(
    Array.from({ length: AT_ONCE }, async () => {
      const writer = new pg.Client({ connectionString: environment.DATABASE_URL });
      await writer.connect();
      return writer;
    }),
  );
}

/** The same rows, on days long before, under ids of their own: one transaction a check-in, one statement a table. */
async function writeRound(
  writers: pg.Client[],
  written: Written,
  senders: Sender[],
  turn: number,
): Promise<number> {
  const days = daysOf(turn).flatMap((back) =>
    senders.map(({ phone }) => ({ clientId: phone.clientId, date: addDays('2020-01-01', back) })),
  );
  return perSecond(days, async ({ clientId, date }, lane) => {
    const writer = writers[lane];
    if (!writer) throw new Error('no writer');
    const checkInId = randomUUID();
    await writer.query('begin');
    for (const { table, rows } of written) {
      const renewed = rows.map((row) => ({
        ...row,
        client_id: clientId,
        ...('id' in row && { id: table === 'check_in' ? checkInId : randomUUID() }),
        ...('check_in_id' in row && { check_in_id: checkInId }),
        ...('dedupe_key' in row && { dedupe_key: checkInId }),
        ...('date' in row && { date }),
      }));
      if (renewed[0]) await insert(writer, table, renewed);
    }
    await writer.query('commit');
  });
}

async function insert(writer: pg.Client, table: string, rows: Row[]): Promise<void> {
  const columns = Object.keys(rows[0] ?? {});
  const places = rows.map(
    (_, row) => `(${columns.map((_, column) => `$${row * columns.length + column + 1}`).join()})`,
  );
  const values = rows.flatMap((row) => columns.map((column) => asParameter(row[column])));
  await writer.query(
    `insert into ${table} (${columns.map((name) => `"${name}"`).join()}) values ${places.join()}`,
    values,
  );
}

/** JSON goes as text; lists of PostgreSQL's and dates as they are. */
function asParameter(value: unknown): unknown {
  const isPlain =
    typeof value === 'object' && value !== null && !Array.isArray(value) && !(value instanceof Date);
  return isPlain ? JSON.stringify(value) : value;
}
