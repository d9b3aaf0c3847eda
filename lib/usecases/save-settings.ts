import type { Actor } from '#lib/auth/actor.ts';
import { refusedNumbers } from '#lib/checks/thresholds/refused-numbers.ts';
import { isLimitId, type Limits, limitsWith } from '#lib/checks/thresholds.ts';
import { insertAudit } from '#lib/db/audit.ts';
import { type TeamPg, withTeamPg } from '#lib/db/client.ts';
import { findClient } from '#lib/db/clients.ts';
import { findChanged, insertSettings, listOwnSettings, lockSettings } from '#lib/db/settings.ts';
import { AppError } from '#lib/errors.ts';
import type { SettingsToSave } from '#lib/schemas/settings.ts';
import { assertMember } from './assert-member.ts';

/**
 * Keeps new numbers of the checks for the team, or for one client over the team's, as a new version. The next night goes
 * by them, and what a check-in raises at once. Reasons remember the version that raised or last changed them.
 */
export async function saveSettings(
  actor: Actor,
  input: SettingsToSave & { clientId: string | null },
  now: Date,
): Promise<{ version: number }> {
  const memberId = assertMember(actor);
  const { clientId, why } = input;
  return withTeamPg(actor.scope, async (tx) => {
    const newest = await lockSettings(tx);
    if (clientId !== null && !(await findClient(tx, clientId)))
      throw new AppError('not-found', 'This client is not here.');
    const before = await findChanged(tx, clientId);
    if (before.version !== input.baseVersion)
      throw new AppError(
        'conflict',
        'Somebody changed these numbers since you opened the page. Open it again: what you typed can be typed over theirs.',
      );
    const base = clientId === null ? {} : (await findChanged(tx, null)).values;
    const values = differing(input.values, base);
    assertTaken(refusedNumbers(values, base));
    if (clientId === null) await assertFitsClients(tx, values);
    const fields = changedBetween(before.values, values);
    if (fields.length === 0)
      throw new AppError('invalid', 'Nothing differs from what is in force: there is nothing to save.');
    const version = newest + 1;
    await insertSettings(tx, { version, clientId, values, why }, { memberId, at: now });
    await insertAudit(tx, actor, {
      action: 'settings-saved',
      clientId,
      objectId: String(version),
      fields,
    });
    return { version };
  });
}

/** Only what is not the same without it. */
function differing(values: Readonly<Record<string, number>>, base: Partial<Limits>): Partial<Limits> {
  const without = limitsWith(base);
  return Object.fromEntries(
    Object.entries(values).filter(([id, value]) => !isLimitId(id) || without[id] !== value),
  );
}

function changedBetween(before: Partial<Limits>, after: Partial<Limits>): string[] {
  const ids = [...new Set([...Object.keys(before), ...Object.keys(after)])].filter(isLimitId);
  return ids.filter((id) => before[id] !== after[id]).sort();
}

function assertTaken(refused: ReadonlyMap<string, string>): void {
  const [first] = refused;
  if (!first) return;
  const fields = Object.fromEntries([...refused].map(([id, why]) => [`values.${id}`, why]));
  throw new AppError('invalid', `${first[0]}: ${first[1]}`, { fields });
}

/** A client's own numbers stay over the team's: the two may not be at odds. */
async function assertFitsClients(tx: TeamPg, team: Partial<Limits>): Promise<void> {
  for (const { name, values } of await listOwnSettings(tx)) {
    const [first] = refusedNumbers(values, team);
    if (first)
      throw new AppError(
        'invalid',
        `These do not go with the numbers of ${name}: there ${first[0]} ${first[1]}. Change those first.`,
      );
  }
}
