import { randomUUID } from 'node:crypto';
import { expect, it } from 'vitest';
import { addDays } from '#lib/domain/local-date.ts';
import { checkClientNow } from '#lib/usecases/check-client-now.ts';
import { lookAtFilm } from '#lib/usecases/looking/look-at-film.ts';
import { undoLook } from '#lib/usecases/looking/undo-look.ts';
import { runNightBatch } from '#lib/usecases/run-night-batch.ts';
import { submitCheckIn } from '#lib/usecases/submit-check-in.ts';
import { aPhone, aTraining, NOW, type Phone, TODAY } from '../check-in/arrange.ts';
import { ownerQuery } from '../support/database.ts';
import { leadOf } from '../team/arrange.ts';

const RUNG = 'H3.5';
const later = (hours: number) => new Date(NOW.getTime() + hours * 3_600_000);

/** Stands on a rung whose pass needs a film, with its pass mark met on three of the last days. */
async function aClient(): Promise<{ phone: Phone; checkInId: string; clipId: string }> {
  const phone = await aPhone('Passes');
  const { clientId, team } = phone;
  const rungId = phone.rungs.get(RUNG) ?? '';
  await ownerQuery('update rung set needs_film = true where id = $1', [rungId]);
  await ownerQuery(
    "update client set joined_at = '2026-09-01', invited_at = '2026-09-01', standing = 'in-training' where id = $1",
    [clientId],
  );
  await ownerQuery(
    `insert into placement (team_id, client_id, ladder_id, rung_id, side, from_date, why)
     select $1, $2, ladder_id, id, side, '2026-09-20', '' from rung, unnest(array['left', 'right']) side where id = $3`,
    [team.teamId, clientId, rungId],
  );
  let checkInId = '';
  for (const days of [60, 6, 4, 2]) {
    const date = addDays(TODAY, -days);
    const set = {
      rungId,
      side: 'both' as const,
      planned: 30,
      value: days === 60 ? 12 : 31,
      how: 'typed' as const,
    };
    const body = aTraining(phone, {
      date,
      sets: [
        { ...set, index: 1 },
        { ...set, index: 2 },
      ],
    });
    checkInId = body.id;
    await submitCheckIn(phone.actor, body, new Date(`${date}T19:00:00Z`));
  }
  const clipId = randomUUID();
  await ownerQuery(
    `insert into clip (team_id, id, client_id, rung_id, side, filmed_on, storage_key, bytes, state, received_at, seconds, fps)
     values ($1, $2, $3, $4, 'both', $5, $6, 1, 'ready', $7, 8, 30)`,
    [team.teamId, clipId, clientId, rungId, addDays(TODAY, -2), `k/${clipId}`, later(-72)],
  );
  return { phone, checkInId, clipId };
}

it('a film waits until it is looked at; a pass that needs one is earned whole by a clean set, and not by one that is not', async () => {
  const { phone, checkInId, clipId } = await aClient();
  const lead = leadOf(phone.team);
  const shorts = async (at: Date) => {
    await checkClientNow(phone.team.scope, phone.clientId, at);
    const rows = await ownerQuery<{ kind: string; short: string }>(
      `select kind, short from reason where client_id = $1 and closed_at is null and kind in ('film-waiting', 'step-up-earned') order by kind`,
      [phone.clientId],
    );
    return rows.map(({ kind, short }) => `${kind}: ${short.split(': ').at(-1)?.replace(/\d+ h/, 'h')}`);
  };
  expect(await shorts(NOW)).toEqual(['film-waiting: film h', 'step-up-earned: numbers earned, film to see']);

  const set = { told: true, checkInId, side: 'both', index: 1 } as const;
  const clean = { act: 'verdict', clipId, set, verdict: 'clean', faults: [] } as const;
  const { actId } = await lookAtFilm(lead, { ...clean, faults: [] }, later(1));
  expect(await shorts(later(2))).toContain('step-up-earned: step earned');
  await undoLook(lead, { clipId, id: actId }, later(3));
  expect(await shorts(later(4))).toContain('step-up-earned: numbers earned, film to see');

  // Not clean: that day does not meet its mark any more, and two of three days are too few.
  await lookAtFilm(lead, { ...clean, verdict: 'not-clean', faults: ['ribs-open'] }, later(5));
  expect((await shorts(later(6))).filter((one) => one.includes('step earned'))).toEqual([]);
  for (const days of [1, 2, 3]) {
    const night = { localDate: addDays(TODAY, days), clientIds: [phone.clientId] };
    await runNightBatch(phone.team.scope, night, later(24 * days + 12));
  }
  const open = await ownerQuery(
    "select kind from reason where client_id = $1 and kind = 'step-up-earned' and closed_at is null",
    [phone.clientId],
  );
  expect(open).toEqual([]);
});
