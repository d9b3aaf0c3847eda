import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { withTeamPg } from '#lib/db/client.ts';
import { listUnfinishedAtSix } from '#lib/db/operation.ts';
import { closeQueues, placeQueuesAt, queue } from '#lib/jobs/queue.ts';
import { loadBoard } from '#lib/usecases/load-board.ts';
import { loadNights } from '#lib/usecases/load-nights.ts';
import { operationFigures } from '#lib/usecases/operation-figures.ts';
import { prepareQueue } from '#lib/usecases/prepare-queue.ts';
import { tryStuck } from '#lib/usecases/try-stuck.ts';
import { leadOf } from '#tests/integration/clients/support.ts';
import {
  makeTestClient,
  makeTestTeam,
  ownerQuery,
  type TestTeam,
} from '#tests/integration/support/database.ts';

let team: TestTeam;
const here = { kind: 'postgres', url: process.env.APP_DATABASE_URL ?? '' } as const;

beforeAll(async () => {
  await placeQueuesAt(here);
  await prepareQueue();
});
afterAll(closeQueues);
beforeEach(async () => {
  await ownerQuery('delete from outbox');
  await ownerQuery('update client set standing = $1', ['left']);
  team = await makeTestTeam();
});

/** Who joined the day before, so that one night is owed. */
async function joined(zone: string, at: string): Promise<string> {
  const { clientId } = await makeTestClient(team, { zone, name: `In ${zone}` });
  await ownerQuery('update client set joined_at = $2, invited_at = $2 where id = $1', [clientId, at]);
  return clientId;
}
const unfinished = (now: string) =>
  withTeamPg(team.scope, (tx) => listUnfinishedAtSix(tx, new Date(now), 14));
const gauge = async (name: string, now: string) => {
  const { text } = await operationFigures(new Date(now));
  return Number(new RegExp(`^${name} (\\S+)$`, 'm').exec(text)?.[1]);
};

describe('a night that is not finished at 06:00', () => {
  it('is an alarm from 06:00 of each client’s own morning until it is done', async () => {
    const [berlin] = [await joined('Europe/Berlin', '2026-03-09T12:00:00Z')];
    await joined('America/New_York', '2026-03-09T12:00:00Z');
    expect(await unfinished('2026-03-10T04:59:00Z')).toEqual([]); // 05:59 in Berlin
    expect(await unfinished('2026-03-10T05:00:00Z')).toEqual([{ localDate: '2026-03-09', clients: 1 }]);
    expect(await unfinished('2026-03-10T10:00:00Z')).toEqual([{ localDate: '2026-03-09', clients: 2 }]); // 06:00 there
    expect(await gauge('plumbline_nights_unfinished_at_six', '2026-03-10T05:00:00Z')).toBe(1);
    await ownerQuery(
      `insert into night_client (team_id, client_id, local_date, done_at, rules_version) values ($1, $2, '2026-03-09', now(), '1')`,
      [team.teamId, berlin],
    );
    expect(await unfinished('2026-03-10T05:00:00Z')).toEqual([]);
    expect(await gauge('plumbline_nights_unfinished_at_six', '2026-03-10T05:00:00Z')).toBe(0);
  });

  it('stays one when it failed so often that it waits for a person', async () => {
    const clientId = await joined('Europe/Berlin', '2026-03-09T12:00:00Z');
    await ownerQuery(
      `insert into night_client (team_id, client_id, local_date, failed_at, failure, attempts, rules_version)
       values ($1, $2, '2026-03-09', now(), 'TypeError', 5, '1')`,
      [team.teamId, clientId],
    );
    expect(await unfinished('2026-03-10T05:00:00Z')).toEqual([{ localDate: '2026-03-09', clients: 1 }]);
  });

  it('is said on the page about nights and at the head of the board', async () => {
    await joined('Europe/Berlin', '2026-03-09T12:00:00Z');
    await ownerQuery(
      `insert into night_run (team_id, local_date, started_at, clients_due, clients_done, clients_failed, rules_version)
       values ($1, '2026-03-09', '2026-03-10T02:00:00Z', 1, 0, 0, '1')`,
      [team.teamId],
    );
    const at = (now: string) => ({
      page: loadNights(leadOf(team), null, new Date(now)),
      board: loadBoard(leadOf(team), {}, new Date(now)),
    });
    const early = at('2026-03-10T04:59:00Z');
    expect((await early.page).unfinishedAtSix).toBe('');
    expect((await early.board).night?.unfinishedAtSix).toBe(0);
    const late = at('2026-03-10T05:00:00Z');
    expect((await late.page).unfinishedAtSix).toBe('the night of Mon for 1 client');
    expect((await late.board).night?.unfinishedAtSix).toBe(1);
  });
});

async function leave(
  kind: string,
  more: { minutes: number; attempts?: number; error?: string; sent?: boolean },
) {
  await ownerQuery(
    `insert into outbox (team_id, kind, dedupe_key, body, created_at, attempts, last_error, sent_at)
     values ($1, $2, $3, '{}', now() - interval '1 minute' * $4, $5, $6, case when $7 then now() end)`,
    [
      team.teamId,
      kind,
      randomUUID(),
      more.minutes,
      more.attempts ?? 0,
      more.error ?? null,
      more.sent === true,
    ],
  );
}

describe('what is stuck in the outbox', () => {
  it('is said by kind after a quarter of an hour, with tries and what the last one said', async () => {
    await leave('push', { minutes: 20, attempts: 4, error: 'the push service answered 503' });
    await leave('push', { minutes: 5 });
    await leave('mail', { minutes: 16 });
    await leave('after-check-in', { minutes: 3 });
    await leave('mail', { minutes: 300, error: 'the mail server refused it (550)', sent: true });
    await leave('push', { minutes: 300, error: 'switched off on this phone', sent: true });
    const view = await loadNights(leadOf(team), null, new Date());
    expect(view.stuck).toEqual([
      { kind: 'mail', words: expect.stringMatching(/^1 mail has not left since .*, not tried yet\.$/) },
      {
        kind: 'push',
        words: expect.stringMatching(
          /^1 notice .*, tried 4 times; the last try said “the push service answered 503”\.$/,
        ),
      },
    ]);
    expect(view.notLeft).toEqual([
      '1 mail has not left in the last 7 days: the mail server refused it (550).',
    ]);
    expect(view.mailsWait).toBe(true); // no mail server is set here
  });

  it.each([
    ['mail', 'deliver-mails'],
    ['push', 'deliver-notices'],
    ['after-check-in', 'deliver-outbox'],
  ] as const)('of kind %s is handed to the worker at once when a coach asks', async (kind, job) => {
    await leave(kind, { minutes: 20, attempts: 9 });
    const other = team;
    team = await makeTestTeam();
    await leave(kind, { minutes: 20, attempts: 9 });
    expect(await tryStuck(team.scope, kind)).toEqual({ waiting: 1 });
    const rows = await ownerQuery<{ mine: boolean; attempts: number }>(
      'select team_id = $1 as mine, attempts from outbox where team_id in ($1, $2) order by mine',
      [team.teamId, other.teamId],
    );
    expect(rows).toEqual([
      { mine: false, attempts: 9 },
      { mine: true, attempts: 0 },
    ]);
    const waiting = await queue('day').getJobs(['waiting'], 0, -1, true);
    expect(waiting).toContainEqual(expect.objectContaining({ name: job }));
  });

  it('stays, and says so, when the queue does not answer', async () => {
    await leave('mail', { minutes: 20 });
    await placeQueuesAt({ kind: 'redis', url: 'redis://127.0.0.1:1' });
    await expect(tryStuck(team.scope, 'mail')).rejects.toMatchObject({ code: 'unavailable' });
    await placeQueuesAt(here);
  });
});
