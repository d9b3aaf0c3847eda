import type { Actor } from '#lib/auth/actor.ts';
import { type Limits, limitsWith } from '#lib/checks/thresholds.ts';
import { withTeamPg } from '#lib/db/client.ts';
import { findClient, listClients } from '#lib/db/clients.ts';
import {
  findChanged,
  listOwnSettings,
  listSettingsVersions,
  type SettingsVersion,
} from '#lib/db/settings.ts';
import { findTeamMember } from '#lib/db/team-members.ts';
import { countVerdicts } from '#lib/db/verdict-counts.ts';
import { localDateOf } from '#lib/domain/local-date.ts';
import { type CheckGroup, changesInWords, checkGroups } from '#lib/views/checks-page.ts';
import { clockTime } from '#lib/views/local-time.ts';
import { exactDate } from '#lib/views/say-date.ts';

const VERSIONS_SHOWN = 40;

export type VersionLine = {
  version: number;
  scope: string;
  clientId: string | null;
  by: string;
  /** Day and time on the reader's own clock. */
  at: string;
  why: string;
  changes: string[];
};
export type ChecksPage = {
  /** null: the whole team. */
  client: { id: string; name: string } | null;
  groups: CheckGroup[];
  /** The newest version of this scope, and what it changes; to save over it, and to take back. */
  version: number;
  changed: Partial<Limits>;
  /** The earlier version whose numbers stand in the fields; null: those in force. */
  opened: number | null;
  /** What the version before this one changed: to take the newest back. */
  before: Partial<Limits>;
  clients: { id: string; name: string }[];
  ownNumbers: { clientId: string; name: string }[];
  versions: VersionLine[];
};

/** The page of numbers for the team or for one client; undefined: no such client here. */
export function loadChecks(
  actor: Actor,
  asked: { client?: string | undefined; version?: number | undefined },
  now: Date,
): Promise<ChecksPage | undefined> {
  const clientId = asked.client ?? null;
  return withTeamPg(actor.scope, async (tx) => {
    const client = clientId === null ? null : await findClient(tx, clientId);
    if (client === undefined) return undefined;
    const team = await findChanged(tx, null);
    const inForce = clientId === null ? team : await findChanged(tx, clientId);
    const versions = await listSettingsVersions(tx, VERSIONS_SHOWN);
    const opened = versions.find((one) => one.version === asked.version && one.clientId === clientId);
    const own = await listOwnSettings(tx);
    const zone = (await findTeamMember(tx, actor.memberId ?? '', now))?.zone ?? 'UTC';
    return {
      client: client && { id: client.id, name: client.name },
      groups: checkGroups({
        without: limitsWith(clientId === null ? {} : team.values),
        changed: (opened ?? inForce).values,
        verdicts: await countVerdicts(tx, clientId),
      }),
      version: inForce.version,
      changed: inForce.values,
      opened: opened?.version ?? null,
      before:
        versions.find((one) => one.clientId === clientId && one.version < inForce.version)?.values ?? {},
      clients: (await listClients(tx))
        .filter(({ standing }) => standing !== 'left')
        .map(({ id, name }) => ({ id, name }))
        .sort((a, b) => a.name.localeCompare(b.name)),
      ownNumbers: own
        .filter(({ values }) => Object.keys(values).length > 0)
        .map(({ clientId: id, name }) => ({ clientId: id, name })),
      versions: versions.map((one, index) => toLine(one, versions.slice(index + 1), zone)),
    };
  });
}

/** `earlier`: the versions before it, newest first. */
function toLine(one: SettingsVersion, earlier: readonly SettingsVersion[], zone: string): VersionLine {
  const before = earlier.find(({ clientId }) => clientId === one.clientId)?.values ?? {};
  const team = one.clientId === null ? {} : (earlier.find(({ clientId }) => clientId === null)?.values ?? {});
  return {
    version: one.version,
    scope: one.clientName ?? 'the team',
    clientId: one.clientId,
    by: one.by ?? 'nobody known',
    at: `${exactDate(localDateOf(one.at, zone))}, ${clockTime(one.at, zone)}`,
    why: one.why,
    changes: changesInWords(before, one.values, limitsWith(team)),
  };
}
