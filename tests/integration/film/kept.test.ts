import { randomUUID } from 'node:crypto';
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { buffer } from 'node:stream/consumers';
import { beforeAll, expect, it } from 'vitest';
import { clipKey, writePiece } from '#lib/files/clip-pieces.ts';
import { fileStore } from '#lib/files/file-store.ts';
import type { PackPart } from '#lib/handover/pack-content.ts';
import { makePack } from '#lib/usecases/handover/make-pack.ts';
import { previewPack } from '#lib/usecases/handover/preview-pack.ts';
import { askErasure } from '#lib/usecases/rights/ask-erasure.ts';
import { chooseRetention } from '#lib/usecases/rights/choose-retention.ts';
import { eraseDueClients } from '#lib/usecases/rights/erase-client.ts';
import { openPack } from '#tests/fixtures/open-pack.ts';
import { WHOLE } from '#tests/fixtures/pack-content.ts';
import { aPhone, NOW, type Phone } from '../check-in/arrange.ts';
import { leadOf } from '../clients/support.ts';
import { ownerQuery } from '../support/database.ts';

let phone: Phone;
const clipId = randomUUID();
const arriving = randomUUID();
const BYTES = Buffer.from('as if it were a film');
beforeAll(async () => {
  phone = await aPhone('Keeps');
  const { teamId } = phone.team;
  for (const [id, state] of [
    [clipId, 'ready'],
    [arriving, 'arriving'],
  ] as const)
    await ownerQuery(
      `insert into clip (team_id, id, client_id, rung_id, side, filmed_on, storage_key, bytes, state, received_at, looked_at, created_at)
       values ($1, $2, $3, $4, 'both', '2026-11-20', $5, $6, $7, '2026-11-20T10:00:00Z', '2026-11-21T10:00:00Z', '2026-11-20T10:00:00Z')`,
      [teamId, id, phone.clientId, phone.rungs.get('H3.4'), clipKey(teamId, id), BYTES.length, state],
    );
  await fileStore().write(clipKey(teamId, clipId), BYTES);
  await writePiece(fileStore(), `${teamId}/${arriving}`, { offset: 0, bytes: Buffer.alloc(10) });
});

async function packWith(parts: PackPart[]) {
  const lead = leadOf(phone.team);
  const made = await makePack(lead, { clientId: phone.clientId, options: { ...WHOLE, parts } }, NOW);
  return openPack(await buffer(made.zip));
}

it('films lie in a pack where they are ticked, with their size said before, and not otherwise', async () => {
  const options = { ...WHOLE, parts: [] };
  const preview = await previewPack(leadOf(phone.team), { clientId: phone.clientId, options }, NOW);
  expect(preview.films).toBe('1 film, 0 MB');
  const without = await packWith(['tables', 'history']);
  expect(without.names.filter((name) => name.includes('films/'))).toEqual([]);
  expect(without.rows('films')).toMatchObject([
    {
      asked_at_utc: '2026-11-20T10:00:00.000Z',
      by: '',
      looked_at_utc: '2026-11-21T10:00:00.000Z',
      words: '',
    },
  ]);
  const pack = await packWith(['films']);
  expect(Buffer.from(pack.bytes(`data/films/2026-11-20-${clipId}.mp4`)).equals(BYTES)).toBe(true);
});

it('a lead says for how many days; the day that was said is said anew', async () => {
  await ownerQuery(`update clip set keep_until = '2027-05-20' where id = $1`, [clipId]);
  await chooseRetention(leadOf(phone.team), { years: 6, erases: false, clipDays: 90 });
  const rows = await ownerQuery(
    `select t.clip_keep_days as days, c.keep_until as until from team t join clip c on c.team_id = t.id where c.id = $1`,
    [clipId],
  );
  expect(rows).toEqual([{ days: 90, until: null }]);
});

it('are gone with the client, pieces of one that was on its way too', async () => {
  const files = () => readdirSync(join(process.env.PLUMBLINE_FILES ?? '', phone.team.teamId));
  expect(files()).toHaveLength(2);
  await askErasure(phone.actor, NOW);
  await eraseDueClients(new Date(NOW.getTime() + 8 * 86_400_000));
  expect(files()).toEqual([]);
  expect(await ownerQuery('select from clip where client_id = $1', [phone.clientId])).toEqual([]);
});
