import type { TeamPg } from '#lib/db/client.ts';
import { pool, teamScope, withTeamPg } from '#lib/db/client.ts';
import { DEMO_SIGN_IN } from '#lib/library/demo-sign-in.ts';
import { hashOf, insertPerson, makeTeam } from '#lib/usecases/make-team.ts';
import { addDays, demoDate } from './calendar.ts';
import { demoClients, otherTeamClients } from './histories.ts';
import { DEMO_ANSWERING, type DemoClient } from './life.ts';
import { writeCheckIns } from './write/check-ins.ts';
import { writeClients } from './write/clients.ts';
import { writeContact } from './write/contact.ts';
import { runDemoNights } from './write/nights.ts';
import { writePastReasons } from './write/past-reasons.ts';
import type { Place } from './write/place.ts';
import { writePlans } from './write/plans.ts';
import { writeStartTests } from './write/start-tests.ts';

export type Seeded = { clients: number; checkIns: number; nights: number };
type Options = {
  now: Date;
  /** How many nights up to yesterday are run at once. */
  nights?: number;
};

/** Fills an empty database with the invented demo. Answers undefined, and does nothing, where anybody can sign in already. */
export async function seedDemo({ now, nights = 21 }: Options): Promise<Seeded | undefined> {
  const { rows } = await pool().query<{ taken: boolean }>('select exists (select from "user") as taken');
  if (rows[0]?.taken) return undefined;
  const today = now.toISOString().slice(0, 10);
  const begun = new Date(`${demoDate(today, 1, 1)}T06:00:00Z`);
  const clients = demoClients(today);
  const firstNight = addDays(today, -nights);
  const teamId = await writeTeam({ clients, begun, firstNight, today, name: 'Low Wall', people: lowWall() });
  await writeTeam({
    clients: otherTeamClients(today),
    begun,
    firstNight,
    today,
    name: 'North Beam',
    people: northBeam(),
  });
  const done = await runDemoNights(teamId, clients, { today, nights, now });
  const checkIns = clients.reduce((sum, { history }) => sum + history.checkIns.length, 0);
  return { clients: clients.length, checkIns, nights: done };
}

type Person = { name: string; email: string; password: string; zone: string };
type People = { lead: Person; second?: Person; assistant?: Person; clientPasswords: Record<string, Person> };

function lowWall(): People {
  const { coach, secondCoach, assistant, client } = DEMO_SIGN_IN;
  return {
    lead: { ...coach, zone: 'Europe/Madrid' },
    second: { ...secondCoach, zone: 'Europe/Vienna' },
    assistant: { ...assistant, zone: 'Europe/Oslo' },
    clientPasswords: { mirembe: { ...client, zone: 'Africa/Kampala' } },
  };
}

function northBeam(): People {
  return { lead: { ...DEMO_SIGN_IN.otherTeam, zone: 'Europe/Stockholm' }, clientPasswords: {} };
}

async function writeTeam(team: {
  name: string;
  begun: Date;
  people: People;
  clients: DemoClient[];
  /** What was told before it is written down, not run. */
  firstNight: string;
  today: string;
}): Promise<string> {
  const { people, begun } = team;
  const { teamId, memberId } = await makeTeam({ name: team.name, lead: people.lead }, begun);
  const second = people.second && {
    ...people.second,
    passwordHash: await hashOf(people.second),
    role: 'coach' as const,
  };
  const assistant = people.assistant && {
    ...people.assistant,
    passwordHash: await hashOf(people.assistant),
    role: 'assistant' as const,
  };
  const passwords = new Map<string, { email: string; hash: string }>();
  for (const [slug, person] of Object.entries(people.clientPasswords)) {
    passwords.set(slug, { email: person.email, hash: await hashOf(person) });
  }
  await withTeamPg(teamScope(teamId), async (tx) => {
    await tx.client.query('update team set answering_hours = $2 where id = $1', [teamId, DEMO_ANSWERING]);
    const secondId = second ? (await insertPerson(tx, second, begun)).memberId : memberId;
    if (assistant) await insertPerson(tx, assistant, begun);
    const place: Place = {
      coachIds: { lead: memberId, second: secondId },
      passwords,
      ...(await libraryOf(tx)),
    };
    await writeClients(tx, team.clients, place);
    await writePlans(tx, team.clients, place);
    await writeStartTests(tx, team.clients, place, team.today);
    await writeCheckIns(tx, team.clients, place);
    const reasons = await writePastReasons(tx, team.clients, place, team.firstNight);
    await writeContact(tx, team.clients, place, reasons);
  });
  return teamId;
}

async function libraryOf(tx: TeamPg): Promise<Pick<Place, 'rungIds' | 'ladderIds' | 'skillIds'>> {
  const idsOf = async (table: 'rung' | 'ladder' | 'skill') => {
    const { rows } = await tx.client.query<{ key: string; id: string }>(
      `select key, id from ${table} where team_id = $1 and key is not null`,
      [tx.teamId],
    );
    return new Map(rows.map((row) => [row.key, row.id]));
  };
  return { rungIds: await idsOf('rung'), ladderIds: await idsOf('ladder'), skillIds: await idsOf('skill') };
}
