import { buffer } from 'node:stream/consumers';
import { withTeamPg } from '#lib/db/client.ts';
import { copyLibrary } from '#lib/db/library.ts';
import { PACK_PARTS, type PackOptions } from '#lib/handover/pack-content.ts';
import { makePack } from '#lib/usecases/handover/make-pack.ts';
import { takeStill } from '#lib/usecases/looking/take-still.ts';
import { aPhoto } from '#tests/fixtures/pictures.ts';
import { aPhone, type Phone } from '../check-in/arrange.ts';
import { fillClient } from '../rights/fill-client.ts';
import { makeTestTeam, ownerQuery, type TestTeam } from '../support/database.ts';
import { leadOf, type MemberActor } from '../team/arrange.ts';

/** A day after everything that is arranged was told, so that it all lies in the period. */
export const LATER = new Date('2026-11-26T12:00:00.000Z');

const EVIDENCE = JSON.stringify({
  what: 'worst joint pain of the days',
  unit: 'pain 0-10',
  before: 3,
  after: 1,
  said: 'Mean pain 3 before, 1 after.',
  changes: ['a rest week'],
  from: '2026-11-10',
  until: '2026-11-24',
  rulesVersion: '1',
});

/** A client with something in every table that a record carries. */
export async function aFullClient(name: string): Promise<Phone> {
  const phone = await aPhone(name);
  await fillClient(phone);
  const { clientId, team } = phone;
  const rung = phone.rungs.get('H3.4');
  const run = (sql: string, ...more: unknown[]) =>
    ownerQuery(sql, [team.teamId, clientId, team.memberId, ...more].slice(0, paramsOf(sql)));
  await run(
    `insert into guardian (team_id, client_id, name, email) select $1, $2, 'Her Mother', 'mother@home.example'`,
  );
  await run(
    `insert into intake (team_id, client_id, answers, completed_at) values ($1, $2, '{"kit": ["wall"], "sports": "climbing"}', '2026-05-01T10:00:00Z')`,
  );
  await run(
    `insert into limit_rule (team_id, client_id, tissue, rule, percent, from_date, until_date, who, words)
     values ($1, $2, 'wrist-back', 'reduced', 50, '2026-11-01', '2026-12-24', 'Dr Sorensen', 'half for a while')`,
  );
  await run(
    `insert into clinician_word (team_id, client_id, by_id, date, region, side, words) values ($1, $2, $3, '2026-11-20', 'elbow-inner', 'right', 'may train')`,
  );
  await run(
    `insert into absence (team_id, client_id, kind, from_date, to_date, said_at) values ($1, $2, 'holiday', '2026-10-01', '2026-10-08', '2026-09-20T08:00:00Z')`,
  );
  await run(
    `insert into goal (team_id, client_id, skill_id, from_date) select $1, $2, id, '2026-06-01' from skill where team_id = $1 order by position limit 1`,
  );
  await run(
    `insert into placement (team_id, client_id, ladder_id, rung_id, side, from_date, why)
     select $1, $2, r.ladder_id, r.id, 'both', '2026-06-01', 'start test' from rung r where r.team_id = $1 and r.id = $3`.replace(
      '$3',
      `'${rung}'`,
    ),
  );
  await run(
    `insert into assessment (team_id, client_id, by_id, skill_id, on_date, answers)
     select $1, $2, $3, p.skill_id, '2026-11-10', jsonb_build_object('skillId', p.skill_id, 'aimRungId', r.id, 'kit', '[]'::jsonb,
       'sessions', '["A"]'::jsonb, 'under18Allowed', false, 'parts', jsonb_build_array(jsonb_build_object('ladderId', l.id, 'askedRungId', r.id,
         'sides', jsonb_build_array(jsonb_build_object('side', 'both', 'film', 'steady', 'rungId', r.id, 'sets', 2, 'value', 14, 'clean', true, 'pain', 1)))))
     from rung r join ladder l on l.team_id = r.team_id and l.id = r.ladder_id join part p on p.team_id = l.team_id and p.id = l.part_id
     where r.team_id = $1 and r.id = '${rung}'`,
  );
  await run(
    `insert into start_tests (team_id, client_id, by_id, aims, kit, tests, words, asked_at, answers, moved_at)
     select $1, $2, $3, jsonb_build_array(jsonb_build_object('skillId', p.skill_id, 'aimRungId', r.id)), '{bar}',
       jsonb_build_array(jsonb_build_object('ladderId', l.id, 'rungId', r.id, 'sets', 3, 'film', true)), 'warm first', '2026-11-08T10:00:00Z',
       jsonb_build_array(jsonb_build_object('ladderId', l.id, 'rungId', r.id, 'side', 'both', 'outcome', 'done', 'values', '[12, 9]'::jsonb,
         'tried', null, 'clean', true, 'pain', null, 'region', null)), '2026-11-09T10:00:00Z'
     from rung r join ladder l on l.team_id = r.team_id and l.id = r.ladder_id join part p on p.team_id = l.team_id and p.id = l.part_id
     where r.team_id = $1 and r.id = '${rung}'`,
  );
  await run(
    `insert into standing_change (team_id, client_id, by_id, before, after, from_date, why, applied_at) values ($1, $2, $3, 'starting', 'in-training', '2026-06-01', 'first plan', now())`,
  );
  await run(
    `insert into client_move (team_id, client_id, from_id, to_id, by_id, note, at) values ($1, $2, $3, $3, $3, 'mind the elbow', '2026-10-10T10:00:00Z')`,
  );
  await run(
    `insert into team_settings (team_id, client_id, by_id, version, values, why) values ($1, $2, $3, 7, '{"loadJump.times": 1.4}', 'comes back from a pause')`,
  );
  await run(
    `insert into film_request (team_id, client_id, by_id, rung_id, side, angle, created_at) values ($1, $2, $3, '${rung}', 'both', 'side', '2026-11-20T10:00:00Z')`,
  );
  await run(
    `with f as (select id from film_request where team_id = $1 and client_id = $2),
       c as (insert into clip (team_id, client_id, request_id, rung_id, side, filmed_on, storage_key, bytes, state, received_at, looked_at, looked_by_id, verdict, faults)
         select $1, $2, f.id, '${rung}', 'both', '2026-11-21', 'clips/' || f.id, 1000, 'ready', '2026-11-21T10:00:00Z', '2026-11-22T10:00:00Z', $3, 'not-clean', '{hips-drop}' from f returning id)
     insert into still_frame (team_id, client_id, clip_id, joints, vertical, scale, mass_model, created_at)
       select $1, $2, c.id, '{}', '{}', '{}', 'winter', '2026-11-22T10:00:00Z' from c`,
  );
  const [clip] = await ownerQuery<{ id: string }>('select id from clip where client_id = $1', [
    phone.clientId,
  ]);
  const taken = { clipId: clip?.id ?? '', atSeconds: 2.4, bytes: await aPhoto() };
  await takeStill(leadOf(phone.team), taken, new Date('2026-11-22T11:00:00Z'));
  await run(`update clip set state = 'gone' where team_id = $1 and client_id = $2`);
  await run(
    `insert into set_verdict (team_id, client_id, clip_id, by_id, check_in_id, rung_id, side, idx, verdict, faults, at)
     select $1, $2, c.id, $3, s.check_in_id, s.rung_id, s.side, s.idx, 'not-clean', '{hips-drop}', '2026-11-22T10:00:00Z'
     from clip c, check_in_set s join check_in k on k.team_id = s.team_id and k.id = s.check_in_id
     where c.team_id = $1 and c.client_id = $2 and s.team_id = $1 and s.client_id = $2 and k.replaced_at is null and k.deleted_at is null
     order by s.id limit 1`,
  );
  await run(
    `insert into verdict (team_id, reason_id, by_id, right_to_tell, text, at)
     select $1, id, $3, true, 'yes', '2026-11-25T08:00:00Z' from reason where team_id = $1 and client_id = $2`,
  );
  await run(
    `insert into step_outcome (team_id, step_id, window_days, outcome, evidence, at)
     select $1, id, 14, 'better', '${EVIDENCE}', '2026-11-25T03:00:00Z' from step_taken where team_id = $1 and client_id = $2`,
  );
  await run(
    `insert into reason_outcome (team_id, reason_id, window_days, outcome, evidence, at)
     select $1, id, 14, 'same', '${EVIDENCE}', '2026-11-25T03:00:00Z' from reason where team_id = $1 and client_id = $2`,
  );
  await run(
    `insert into seen_mark (team_id, client_id, by_id, check_in_id, at) select $1, $2, $3, id, '2026-11-25T08:00:00Z' from check_in where team_id = $1 and client_id = $2`,
  );
  await run(
    `insert into consent (team_id, client_id, kind, text_version, given_at, given_by) values ($1, $2, 'share-with-next-coach', '1', '2026-06-01T10:00:00Z', 'the client')`,
  );
  await run(
    `insert into danger_sign_told (team_id, client_id, check_in_id, sign, region, side)
     select $1, $2, id, 'swelling', 'elbow-inner', 'right' from check_in where team_id = $1 and client_id = $2 and corrects_id is not null`,
  );
  // No two rows are alike but for their ids: else nobody could say which is which on the other side.
  await run(
    `update check_in_set s set planned = s.planned + 1 from check_in c
     where c.team_id = s.team_id and c.id = s.check_in_id and c.corrects_id is null and s.team_id = $1 and s.client_id = $2`,
  );
  await run(
    `update coach_word w set text = w.text || ' ' || s.idx || ' ' || s.planned from check_in_set s
     where s.team_id = w.team_id and s.id = w.set_id and w.team_id = $1 and w.client_id = $2`,
  );
  await run(
    `update seen_mark m set at = m.at + interval '1 hour' from check_in c
     where c.team_id = m.team_id and c.id = m.check_in_id and c.corrects_id is null and m.team_id = $1 and m.client_id = $2`,
  );
  return phone;
}

function paramsOf(sql: string): number {
  return Math.max(0, ...(sql.match(/\$(\d)/g) ?? []).map((one) => Number(one.slice(1))));
}

/** Another team, with the starter library as its own. */
export async function anotherTeam(name = 'Other team'): Promise<{ team: TestTeam; lead: MemberActor }> {
  const team = await makeTestTeam(name);
  await withTeamPg(team.scope, (tx) => copyLibrary(tx));
  return { team, lead: leadOf(team) };
}

export const EVERYTHING: PackOptions = {
  period: { from: null, to: null },
  parts: [...PACK_PARTS],
  paper: 'A4',
  words: { why: 'moves on', forWhom: 'the next coach', summary: null, next: null, manner: null },
};

export async function packOfClient(
  actor: MemberActor,
  clientId: string,
  options: PackOptions = EVERYTHING,
): Promise<Buffer> {
  return buffer((await makePack(actor, { clientId, options }, LATER)).zip);
}
