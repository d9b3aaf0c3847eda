import { Readable } from 'node:stream';
import type { Actor } from '#lib/auth/actor.ts';
import { insertAudit } from '#lib/db/audit.ts';
import { type TeamScope, withTeamPg } from '#lib/db/client.ts';
import {
  listTeamClients,
  listTeamColumns,
  readTeamTable,
  TEAM_TABLES,
  type TeamClient,
  type TeamTable,
} from '#lib/db/team-tables.ts';
import { AppError } from '#lib/errors.ts';
import { type Cell, type Column, csvPieces } from '#lib/handover/csv.ts';
import { teamReadme } from '#lib/handover/team-readme.ts';
import { type TeamFile, teamZip } from '#lib/handover/team-zip.ts';
import { exportClient } from '#lib/usecases/export-client.ts';

/**
 * Everything of the team as one zip, streamed: a folder with the record for each client, and the team's own tables
 * without secrets. A line in the record of acts for the whole, and one for each client as their record is read.
 */
export async function exportTeam(actor: Actor, now: Date): Promise<{ fileName: string; zip: Readable }> {
  await withTeamPg(actor.scope, (tx) => insertAudit(tx, actor, { action: 'team-exported', fields: [] }));
  const clients = await listTeamClients(actor.scope);
  return {
    fileName: `everything-${now.toISOString().slice(0, 10)}.zip`,
    zip: teamZip(filesOf(actor, clients, now), now),
  };
}

async function* filesOf(actor: Actor, clients: TeamClient[], now: Date): AsyncGenerator<TeamFile> {
  const made = now.toISOString();
  const text = (name: string, body: string): TeamFile => ({
    name,
    packed: false,
    open: () => Readable.from([Buffer.from(body)]),
  });
  yield text('README.txt', teamReadme({ made, team: actor.teamName, clients: clients.length }));
  yield { name: 'clients.csv', packed: false, open: () => csv(INDEX, () => batchOf(clients)) };
  for (const of of TEAM_TABLES) yield await tableFile(actor.scope, of);
  for (const client of clients) {
    // Whoever is deleted while the others are read is left out.
    const pack = await exportClient(actor, client.id, now).catch((error: unknown) => {
      if (error instanceof AppError && error.code === 'not-found') return undefined;
      throw error;
    });
    if (pack) yield { name: `${folderOf(client)}/${pack.fileName}`, packed: true, open: () => pack.zip };
  }
}

function folderOf(client: TeamClient): string {
  return `clients/client-${client.id.slice(0, 8)}`;
}

const INDEX: Column<TeamClient>[] = [
  { name: 'folder', value: (row) => folderOf(row) },
  { name: 'client_id', value: (row) => row.id },
  { name: 'name', value: (row) => row.name },
  { name: 'standing', value: (row) => row.standing },
  { name: 'coach', value: (row) => row.coach },
];

async function tableFile(scope: TeamScope, of: TeamTable): Promise<TeamFile> {
  const columns = (await listTeamColumns(scope, of)).map((name) => ({
    name,
    value: (row: Record<string, unknown>) => toCell(row[name]),
  }));
  return {
    name: `team/${of.name}.csv`,
    packed: false,
    open: () => csv(columns, () => readTeamTable(scope, of)),
  };
}

function csv<Row>(columns: readonly Column<Row>[], batches: () => AsyncIterable<readonly Row[]>): Readable {
  return Readable.from(csvPieces(columns, batches), { objectMode: true });
}

async function* batchOf<Row>(rows: readonly Row[]): AsyncGenerator<readonly Row[]> {
  yield rows;
}

function toCell(value: unknown): Cell {
  if (value === null || value === undefined) return null;
  if (typeof value === 'string' || typeof value === 'number' || typeof value === 'boolean') return value;
  return JSON.stringify(value);
}
