import type { TeamPg } from './client.ts';
import { idOf } from './id-of.ts';

export type StartTestsRow = {
  id: string;
  clientId: string;
  byId: string;
  by: string;
  kit: string[];
  under18Allowed: boolean;
  words: string;
  askedAt: Date;
  movedAt: Date | null;
  doneAt: Date | null;
  endedAt: Date | null;
  placedAt: Date | null;
  /** As they were kept: read them with the schema of start tests. */
  aims: unknown;
  tests: unknown;
  answers: unknown;
  placed: unknown;
};

const COLUMNS = `s.id, s.client_id as "clientId", s.by_id as "byId", m.name as by, coalesce(s.kit, '{}') as kit, s.under18_allowed as "under18Allowed",
  s.words, s.asked_at as "askedAt", s.moved_at as "movedAt", s.done_at as "doneAt", s.ended_at as "endedAt",
  s.placed_at as "placedAt", s.aims, s.tests, s.answers, s.placed
  from start_tests s join member m on m.team_id = s.team_id and m.id = s.by_id`;
const MOST = 20;

export async function insertStartTests(
  tx: TeamPg,
  made: {
    clientId: string;
    byId: string;
    aims: object[];
    kit: string[];
    under18Allowed: boolean;
    tests: object[];
    words: string;
    now: Date;
  },
): Promise<string> {
  const { rows } = await tx.client.query<{ id: string }>(
    `insert into start_tests (team_id, client_id, by_id, aims, kit, under18_allowed, tests, words, asked_at)
     values ($1, $2, $3, $4, $5, $6, $7, $8, $9) returning id`,
    [
      tx.teamId,
      made.clientId,
      made.byId,
      JSON.stringify(made.aims),
      made.kit,
      made.under18Allowed,
      JSON.stringify(made.tests),
      made.words,
      made.now,
    ],
  );
  return idOf(rows);
}

/** All that were asked of a client, newest first; those that were taken back too. */
export async function listStartTests(tx: TeamPg, clientId: string): Promise<StartTestsRow[]> {
  const { rows } = await tx.client.query<StartTestsRow>(
    `select ${COLUMNS} where s.team_id = $1 and s.client_id = $2::uuid order by s.asked_at desc, s.id limit ${MOST}`,
    [tx.teamId, clientId],
  );
  return rows;
}

/** The one that the client may fill in: not taken back and not used to place yet; locked where it is to be changed. */
export async function findOpenStartTests(
  tx: TeamPg,
  clientId: string,
  { lock = false }: { lock?: boolean } = {},
): Promise<StartTestsRow | undefined> {
  const { rows } = await tx.client.query<StartTestsRow>(
    `select ${COLUMNS} where s.team_id = $1 and s.client_id = $2::uuid and s.ended_at is null and s.placed_at is null
     order by s.asked_at desc, s.id limit 1 ${lock ? 'for no key update of s' : ''}`,
    [tx.teamId, clientId],
  );
  return rows[0];
}

export async function lockStartTests(
  tx: TeamPg,
  clientId: string,
  testsId: string,
): Promise<StartTestsRow | undefined> {
  const { rows } = await tx.client.query<StartTestsRow>(
    `select ${COLUMNS} where s.team_id = $1 and s.client_id = $2::uuid and s.id = $3::uuid for no key update of s`,
    [tx.teamId, clientId, testsId],
  );
  return rows[0];
}

export async function saveStartAnswers(
  tx: TeamPg,
  testsId: string,
  kept: { answers: object[]; movedAt: Date; doneAt: Date | null },
): Promise<void> {
  await tx.client.query(
    'update start_tests set answers = $3, moved_at = $4, done_at = $5 where team_id = $1 and id = $2::uuid',
    [tx.teamId, testsId, JSON.stringify(kept.answers), kept.movedAt, kept.doneAt],
  );
}

export async function endStartTests(tx: TeamPg, testsId: string, endedAt: Date | null): Promise<void> {
  await tx.client.query('update start_tests set ended_at = $3 where team_id = $1 and id = $2::uuid', [
    tx.teamId,
    testsId,
    endedAt,
  ]);
}

export async function markPlaced(
  tx: TeamPg,
  testsId: string,
  placed: { at: Date; what: object } | null,
): Promise<void> {
  await tx.client.query(
    'update start_tests set placed_at = $3, placed = $4 where team_id = $1 and id = $2::uuid',
    [tx.teamId, testsId, placed?.at ?? null, placed === null ? null : JSON.stringify(placed.what)],
  );
}

type Place = { ladderId: string; side: string; rungId: string; from: string; why: string };

/** Takes back what a placing wrote, and puts back what stood there on those days before. */
export async function replacePlacements(
  tx: TeamPg,
  clientId: string,
  { gone, back }: { gone: readonly Place[]; back: readonly Place[] },
): Promise<void> {
  const read =
    'jsonb_to_recordset($3) as r("ladderId" uuid, "rungId" uuid, side text, "from" date, why text)';
  await tx.client.query(
    `delete from placement p using ${read} where p.team_id = $1 and p.client_id = $2::uuid
       and p.ladder_id = r."ladderId" and p.side = r.side and p.from_date = r."from" and p.why = r.why`,
    [tx.teamId, clientId, JSON.stringify(gone)],
  );
  await tx.client.query(
    `insert into placement (team_id, client_id, ladder_id, rung_id, side, from_date, why)
     select $1, $2, r."ladderId", r."rungId", r.side, r."from", r.why from ${read} on conflict do nothing`,
    [tx.teamId, clientId, JSON.stringify(back)],
  );
}

/** What "clean" means on each ladder, and where the camera stands for each rung. */
export async function listHowDone(
  tx: TeamPg,
  rungIds: readonly string[],
): Promise<Map<string, { clean: string; camera: string; note: string }>> {
  const { rows } = await tx.client.query<{ id: string; clean: string; camera: string; note: string }>(
    `select r.id, l.clean, d.camera, r.note from rung r join drill d on d.team_id = r.team_id and d.id = r.drill_id
     join ladder l on l.team_id = r.team_id and l.id = r.ladder_id where r.team_id = $1 and r.id = any($2::uuid[])`,
    [tx.teamId, rungIds],
  );
  return new Map(rows.map(({ id, ...how }) => [id, how]));
}

/** Kit that the client told at the start, as it was kept. */
export async function findToldKit(tx: TeamPg, clientId: string): Promise<unknown> {
  const { rows } = await tx.client.query<{ kit: unknown }>(
    `select answers->'kit' as kit from intake where team_id = $1 and client_id = $2::uuid`,
    [tx.teamId, clientId],
  );
  return rows[0]?.kit;
}
