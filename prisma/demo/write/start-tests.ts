import type { TeamPg } from '#lib/db/client.ts';
import { skillKey } from '#lib/library/copy-plan.ts';
import { planTemplateSchema } from '#lib/schemas/plan.ts';
import type { DemoClient } from '../life.ts';
import { demoRung } from '../rungs.ts';
import { demoStartTests } from '../start-tests.ts';
import { insertRows } from './insert.ts';
import { coachOf, idOf, type Place } from './place.ts';

/** The start tests of the newest clients, and the kept plan that a start begins from. */
export async function writeStartTests(
  tx: TeamPg,
  clients: DemoClient[],
  place: Place,
  today: string,
): Promise<void> {
  const named = <One extends { ladderId: string; rungId: string }>(one: One) => ({
    ...one,
    ladderId: idOf(place.ladderIds, one.ladderId),
    rungId: idOf(place.rungIds, one.rungId),
  });
  const rows = clients.flatMap((client) => {
    const start = demoStartTests(client, today);
    if (!start) return [];
    const skill = demoRung(start.aim).skill;
    return [
      {
        client_id: client.history.client.id,
        by_id: coachOf(place, client),
        aims: [{ skillId: idOf(place.skillIds, skillKey(skill)), aimRungId: idOf(place.rungIds, start.aim) }],
        kit: start.kit,
        tests: start.tests.map(named),
        words: start.words,
        asked_at: start.askedAt,
        answers: start.answers.map(named),
        moved_at: start.movedAt,
        done_at: start.doneAt,
      },
    ];
  });
  if (rows.length === 0) return;
  await insertRows(
    tx,
    'start_tests',
    {
      client_id: 'uuid',
      by_id: 'uuid',
      aims: 'jsonb',
      kit: 'text[]',
      tests: 'jsonb',
      words: 'text',
      asked_at: 'timestamptz',
      answers: 'jsonb',
      moved_at: 'timestamptz',
      done_at: 'timestamptz',
    },
    rows,
  );
  const { name, body } = planTemplateSchema.parse(firstMonth(place));
  await tx.client.query('insert into plan_template (team_id, name, body) values ($1, $2, $3)', [
    tx.teamId,
    name,
    JSON.stringify(body),
  ]);
}

function firstMonth(place: Place) {
  const line = (
    session: 'A' | 'B',
    rung: string,
    sets: number,
    dose: { target: number } | { minutes: number },
  ) => ({
    session,
    rungId: idOf(place.rungIds, rung),
    side: 'both',
    sets,
    target: 'target' in dose ? dose.target : null,
    minutes: 'minutes' in dose ? dose.minutes : null,
    timesPerWeek: 1.5,
  });
  return {
    name: 'First month towards the handstand',
    body: {
      sessionsPerWeek: 3,
      notes: 'The first week is short on purpose.',
      sessions: [
        { label: 'A', restSeconds: 90, warmUp: 'Wrists, shoulders, five minutes', warmUpMinutes: 5 },
        { label: 'B', restSeconds: 90, warmUp: 'Wrists, shoulders, five minutes', warmUpMinutes: 5 },
      ],
      items: [
        line('A', 'W1.2', 3, { target: 12 }),
        line('A', 'H2.3', 4, { target: 45 }),
        line('A', 'H1.2', 3, { target: 3 }),
        line('A', 'X1.2', 1, { minutes: 4 }),
        line('B', 'W1.2', 3, { target: 12 }),
        line('B', 'H2.5', 4, { target: 20 }),
        line('B', 'H3.1', 3, { target: 8 }),
        line('B', 'U1.2', 4, { target: 6 }),
      ],
    },
  };
}
