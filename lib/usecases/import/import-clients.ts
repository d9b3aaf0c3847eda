import type { Actor } from '#lib/auth/actor.ts';
import { insertAudit } from '#lib/db/audit.ts';
import { type TeamPg, withTeamPg } from '#lib/db/client.ts';
import { insertClient, insertNote, listClientDoubles, lockClientList } from '#lib/db/clients.ts';
import { listTeamMembers } from '#lib/db/team-members.ts';
import { AppError } from '#lib/errors.ts';
import type { ClientImport } from '#lib/schemas/client-import.ts';
import { exactDate } from '#lib/views/say-date.ts';
import { assertMember } from '../assert-member.ts';
import { inviteClientIn } from '../invite-client.ts';
import { type CheckedRow, checkClientList, type TeamFacts } from './check-client-list.ts';
import { type ClientList, readClientList } from './read-client-list.ts';

export type ListPreview = Pick<ClientList, 'columns' | 'notRead'> & { rows: CheckedRow[] };
export type ListImported = {
  clients: { clientId: string; name: string; url: string | null; mailedTo: string | null }[];
};

/** What a list would bring, row by row. Writes nothing. */
export async function previewClientList(actor: Actor, text: string, now: Date): Promise<ListPreview> {
  const { columns, notRead, rows } = readClientList(text);
  const team = await withTeamPg(actor.scope, (tx) => factsOf(tx, actor, now));
  return { columns, notRead, rows: checkClientList(rows, team) };
}

/** Takes the ticked rows of a list, all or none, in one transaction. The same list again adds nobody twice. */
export async function importClients(
  actor: Actor,
  input: Extract<ClientImport, { do: 'import' }>,
  now: Date,
): Promise<ListImported> {
  const byId = assertMember(actor);
  const { rows } = readClientList(input.text);
  return withTeamPg(actor.scope, async (tx) => {
    await lockClientList(tx);
    const chosen = new Map(input.rows.map((row) => [row.line, row.sameName]));
    const taken = checkClientList(rows, await factsOf(tx, actor, now)).filter(({ line }) => chosen.has(line));
    assertTakeable(taken, chosen);
    const clients: ListImported['clients'] = [];
    for (const row of taken) {
      const clientId = await insertRow(tx, row, { byId, now });
      await insertAudit(tx, actor, { action: 'client-made', clientId, fields: ['from a list'] });
      clients.push({
        clientId,
        name: row.name,
        ...(await linkOf(tx, actor, { row, clientId, ...input }, now)),
      });
    }
    await insertAudit(tx, actor, { action: 'list-imported', objectId: String(taken.length), fields: [] });
    return { clients };
  });
}

async function factsOf(tx: TeamPg, actor: Actor, now: Date): Promise<TeamFacts> {
  const members = await listTeamMembers(tx, now);
  const self = members.find(({ id }) => id === actor.memberId);
  return {
    coaches: members.filter(({ role }) => role !== 'assistant'),
    clients: await listClientDoubles(tx),
    self: { id: self?.id ?? '', zone: self?.zone ?? 'UTC' },
    today: self?.today ?? now.toISOString().slice(0, 10),
  };
}

function assertTakeable(taken: readonly CheckedRow[], chosen: ReadonlyMap<number, boolean>): void {
  const fields: Record<string, string> = {};
  for (const row of taken) {
    const why = whyNot(row, chosen.get(row.line) ?? false);
    if (why) fields[`line ${row.line}`] = why;
  }
  for (const line of chosen.keys())
    if (!taken.some((row) => row.line === line)) fields[`line ${line}`] = 'is not a row of this list';
  const [first] = Object.entries(fields);
  if (!first) return;
  const count = Object.keys(fields).length;
  const more = count > 1 ? ` ${count} rows cannot be taken.` : '';
  throw new AppError('invalid', `${first[0]}: ${first[1]}.${more} Nobody was added.`, { fields });
}

function whyNot({ problems, double }: CheckedRow, sameName: boolean): string | undefined {
  const [problem] = problems;
  if (problem) return `${problem.column} ${problem.message}`;
  if (double?.by === 'e-mail') return `this e-mail address is in ${double.of} already`;
  if (double && !sameName) return `this name is in ${double.of} already`;
  return undefined;
}

async function insertRow(
  tx: TeamPg,
  row: CheckedRow,
  { byId, now }: { byId: string; now: Date },
): Promise<string> {
  const { coachId, name, email, zone, under18, goal, started } = row;
  const told = { usualSessionMinutes: null, toldWeekAu: null };
  const clientId = await insertClient(tx, { coachId, name, email, zone, under18, goal, ...told }, now);
  if (started) {
    const text = `Training with us since ${exactDate(started)}, as the imported list says.`;
    await insertNote(tx, { clientId, byId, text, now });
  }
  return clientId;
}

async function linkOf(
  tx: TeamPg,
  actor: Actor,
  about: { row: CheckedRow; clientId: string; links: 'mail' | 'show' | 'later' },
  now: Date,
): Promise<{ url: string | null; mailedTo: string | null }> {
  const { row, clientId, links } = about;
  if (links === 'later') return { url: null, mailedTo: null };
  const { url, mailedTo } = await inviteClientIn(tx, actor, { clientId, mails: links === 'mail' }, now);
  return links === 'mail' && row.email ? { url: null, mailedTo } : { url, mailedTo: null };
}
