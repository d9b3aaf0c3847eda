import { randomUUID } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { buffer } from 'node:stream/consumers';
import { Ajv2020 } from 'ajv/dist/2020.js';
import addFormats from 'ajv-formats';
import { parse } from 'csv-parse/sync';
import { expect, test } from 'vitest';
import yauzl from 'yauzl';
import { DEFAULT_LIMITS } from '#lib/checks/thresholds.ts';
import { AppError } from '#lib/errors.ts';
import { asEntered } from '#lib/handover/csv.ts';
import { findingsByNight } from '#lib/handover/history-findings.ts';
import { readHistory } from '#lib/handover/read-history.ts';
import { assessmentSchema } from '#lib/schemas/assessment.ts';
import { exportClient } from '#lib/usecases/export-client.ts';
import { saveAssessment } from '#lib/usecases/save-assessment.ts';
import { copyLibraryInto, leadOf } from '#tests/integration/clients/support.ts';
import {
  makeTestClient,
  makeTestTeam,
  ownerQuery,
  type TestTeam,
} from '#tests/integration/support/database.ts';

const NOW = new Date('2026-11-25T07:00:00.000Z');

async function unzip(bytes: Buffer): Promise<Map<string, string>> {
  const files = new Map<string, string>();
  const zip = await yauzl.fromBufferPromise(bytes);
  for await (const entry of zip.eachEntry()) {
    files.set(
      entry.fileName.replace(/^data\/(tables\/)?/, ''),
      (await buffer(await zip.openReadStreamPromise(entry))).toString('utf8'),
    );
  }
  return files;
}

function rowsOf(files: Map<string, string>, name: string): Record<string, string>[] {
  const text = files.get(name) ?? '';
  expect(text.startsWith('\uFEFF')).toBe(true);
  return parse(text, { bom: true, columns: true, record_delimiter: '\r\n' });
}

async function exported(team: TestTeam, clientId: string) {
  const { fileName, zip } = await exportClient(leadOf(team), clientId, NOW);
  return { fileName, files: await unzip(await buffer(zip)) };
}

function schemaProblems(text: string): unknown {
  const ajv = new Ajv2020({ strict: false, allErrors: true });
  addFormats.default(ajv);
  const validate = ajv.compile(JSON.parse(readFileSync('lib/handover/history.schema.json', 'utf8')));
  return validate(JSON.parse(text)) ? null : validate.errors;
}

test('everything entered comes out, corrections beside their originals, formulas harmless', async () => {
  const team = await makeTestTeam();
  const { clientId } = await makeTestClient(team, { name: '=cmd|x', zone: 'Europe/Lisbon' });
  const { both: rungId } = await copyLibraryInto(team);
  const [first, second] = [randomUUID(), randomUUID()];
  const insert = (id: string, corrects: string | null, words: string, replaced: boolean) =>
    ownerQuery(
      `insert into check_in (team_id, id, client_id, corrects_id, body_hash, date, zone, sent_at, kind, effort, minutes, words, replaced_at)
       values ($1, $2, $3, $4, 'x', '2026-11-23', 'Europe/Lisbon', '2026-11-23T19:00:00Z', 'training', 7, 55, $5, $6)`,
      [team.teamId, id, clientId, corrects, words, replaced ? '2026-11-23T20:00:00Z' : null],
    );
  await insert(first, null, 'typed wrong', true);
  await insert(second, first, '=1+1', false);
  await ownerQuery(
    `insert into check_in_set (team_id, check_in_id, client_id, rung_id, side, idx, planned, value, how, added_kg, faults)
     values ($1, $2, $3, $4, 'both', 1, 5, 4.5, 'typed', -2.5, '{came-off}')`,
    [team.teamId, second, clientId, rungId],
  );
  await ownerQuery(
    `insert into pain_score (team_id, check_in_id, client_id, region, side, moment, value, kind)
     values ($1, $2, $3, 'elbow-inner', 'right', 'after', 4, 'joint')`,
    [team.teamId, second, clientId],
  );
  await ownerQuery(
    `insert into coach_word (team_id, client_id, by_id, check_in_id, set_id, text, created_at)
     select team_id, client_id, $2, check_in_id, id, '=Slower', '2026-11-24T08:00:00Z' from check_in_set where team_id = $1`,
    [team.teamId, team.memberId],
  );
  const { fileName, files } = await exported(team, clientId);

  expect(rowsOf(files, 'coach_words.csv')).toMatchObject([
    { check_in_id: second, date: '2026-11-23', set: '1', words: "'=Slower", read_at_utc: '' },
  ]);
  expect(fileName).toMatch(/^handover-[0-9a-f]{8}-2026-11-25\.zip$/);
  const checkIns = rowsOf(files, 'check_ins.csv');
  expect(checkIns.map((row) => [row.check_in_id, row.replaced_at_utc !== '', row.session_load_au])).toEqual(
    expect.arrayContaining([
      [first, true, '385'],
      [second, false, '385'],
    ]),
  );
  const words = checkIns.find((row) => row.check_in_id === second)?.words ?? '';
  expect(words).toBe("'=1+1");
  expect(asEntered(words)).toBe('=1+1');
  expect(rowsOf(files, 'sets.csv')).toMatchObject([
    { planned_in_unit: '5', done_in_unit: '4.5', added_kg: '-2.5', set: '1', faults: 'came-off' },
  ]);
  expect(rowsOf(files, 'pain.csv')).toMatchObject([
    { pain_0_10: '4', region: 'elbow-inner', check_in_replaced: 'no' },
  ]);
  expect(rowsOf(files, 'load_by_day.csv')).toMatchObject([
    { date: '2026-11-23', session_load_au: '385', day: 'trained' },
  ]);

  const text = files.get('history.json') ?? '';
  expect(schemaProblems(text)).toBeNull();
  const read = readHistory(Buffer.from(text), 'history.json'); // as check-history does
  expect(findingsByNight(read, '2026-11-24', DEFAULT_LIMITS)).toBeInstanceOf(Array);
  expect(JSON.parse(text)).toMatchObject({
    formatVersion: 1,
    checkIns: [{ id: second, sets: [{ value: 4.5 }] }],
  });
  expect(files.get('README.txt')).toContain('does not diagnose');
  const audit = await ownerQuery('select action from audit where client_id = $1', [clientId]);
  expect(audit).toEqual([{ action: 'client-exported' }]);
});

test('assessments leave by part and side, in the table and in history.json', async () => {
  const team = await makeTestTeam();
  const { clientId } = await makeTestClient(team, { zone: 'Europe/Lisbon' });
  await copyLibraryInto(team);
  const [rung] = await ownerQuery<
    Record<'id' | 'name' | 'ladder_id' | 'ladder' | 'part' | 'skill' | 'skill_id', string>
  >(
    `select r.id, r.name, r.ladder_id, l.name as ladder, p.name as part, s.name as skill, p.skill_id from rung r
     join drill d on d.team_id = r.team_id and d.id = r.drill_id
     join ladder l on l.team_id = r.team_id and l.id = r.ladder_id
     join part p on p.team_id = l.team_id and p.id = l.part_id join skill s on s.team_id = p.team_id and s.id = p.skill_id
     where r.team_id = $1 and d.measure = 'hold' and d.each_side order by l.key, r.position limit 1`,
    [team.teamId],
  );
  if (!rung) throw new Error('no hold of each side in the library');
  const left = {
    side: 'left',
    film: 'hurried',
    rungId: rung.id,
    sets: 3,
    value: '7,5',
    clean: true,
    pain: 2,
  };
  const assessment = assessmentSchema.parse({
    skillId: rung.skill_id,
    aimRungId: rung.id,
    kit: ['rings'],
    sessions: ['A'],
    parts: [{ ladderId: rung.ladder_id, askedRungId: rung.id, sides: [left, { side: 'right' }] }],
  });
  const { assessmentId } = await saveAssessment(leadOf(team), { clientId, assessment }, NOW);
  const { files } = await exported(team, clientId);

  const about = { assessment_id: assessmentId, date: '2026-11-25', zone: 'Europe/Lisbon', skill: rung.skill };
  const place = { aim: rung.name, kit: 'rings', part: rung.part, ladder: rung.ladder, asked_rung: rung.name };
  expect(rowsOf(files, 'assessments.csv')).toMatchObject([
    {
      ...about,
      ...place,
      saved_at_utc: '2026-11-25T07:00:00.000Z',
      side: 'left',
      film_shows: 'hurried',
      rung: rung.name,
      sets_or_tries: '3',
      unit: 's',
      done_in_unit: '7.5',
      clean: 'yes',
      pain_0_10: '2',
    },
    {
      ...about,
      ...place,
      side: 'right',
      film_shows: 'not-seen',
      rung: '',
      unit: '',
      done_in_unit: '',
      clean: '',
    },
  ]);
  const text = files.get('history.json') ?? '';
  expect(schemaProblems(text)).toBeNull();
  const nothing = { rung: null, unit: null, sets: null, value: null, clean: null, pain: null };
  const { assessments } = readHistory(Buffer.from(text), 'history.json');
  expect(assessments).toMatchObject([
    {
      id: assessmentId,
      date: '2026-11-25',
      aim: rung.name,
      kit: ['rings'],
      parts: [
        {
          ladder: rung.ladder,
          asked: rung.name,
          sides: [
            {
              side: 'left',
              film: 'hurried',
              rung: rung.name,
              unit: 's',
              sets: 3,
              value: 7.5,
              clean: true,
              pain: 2,
            },
            { side: 'right', film: 'not-seen', ...nothing },
          ],
        },
      ],
    },
  ]);
});

test('a client with nothing still leaves whole', async () => {
  const team = await makeTestTeam();
  const { clientId } = await makeTestClient(team);
  const { files } = await exported(team, clientId);
  expect(schemaProblems(files.get('history.json') ?? '')).toBeNull();
  const tables = [...files.keys()].filter((name) => name.endsWith('.csv'));
  expect(tables).toHaveLength(28);
  for (const name of tables.filter((one) => one !== 'consents.csv')) expect(rowsOf(files, name)).toEqual([]);
});

test("somebody else's client is not there", async () => {
  const [mine, other] = [await makeTestTeam(), await makeTestTeam('Other')];
  const { clientId } = await makeTestClient(other);
  const refused = exportClient(leadOf(mine), clientId, NOW);
  await expect(refused).rejects.toMatchObject({ code: 'not-found' });
  await expect(refused).rejects.toBeInstanceOf(AppError);
});

test('what others took on a rung leaves only when it is about eight or more', async () => {
  const team = await makeTestTeam();
  const { both: rungId } = await copyLibraryInto(team);
  const { clientId } = await makeTestClient(team);
  const place = (client: string, days: number) =>
    ownerQuery(
      `insert into placement (team_id, client_id, ladder_id, rung_id, side, from_date)
       select r.team_id, $2, r.ladder_id, r.id, 'both', '2026-01-01'::date + $3::int from rung r
       join rung told on told.team_id = r.team_id and told.ladder_id = r.ladder_id
       where told.id = $1 and r.position = told.position + case when $3::int > 0 then 1 else 0 end`,
      [rungId, client, days],
    );
  await place(clientId, 0);
  const usualHere = async () => {
    const { files } = await exported(team, clientId);
    const { rungs } = JSON.parse(files.get('history.json') ?? '') as { rungs: Record<string, unknown>[] };
    return rungs.find((rung) => rung.id === rungId)?.usualDaysHere;
  };
  for (let others = 1; others <= 8; others += 1) {
    const { clientId: other } = await makeTestClient(team);
    await place(other, 0);
    await place(other, 40);
    if (others === 7) expect(await usualHere()).toBeUndefined();
  }
  expect(await usualHere()).toEqual({ days: 40, passed: 8 });
});
