import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { addNoticePhone } from '#lib/usecases/choose-notices.ts';
import { sayOnCheckIn } from '#lib/usecases/say-on-check-in.ts';
import { submitCheckIn } from '#lib/usecases/submit-check-in.ts';
import { HANDLERS } from '#worker/handlers/by-name.ts';
import { aPhone, aTraining, NOW } from '../check-in/arrange.ts';
import { leadOf } from '../clients/support.ts';
import { openPushService } from './push-service.ts';

const folder = mkdtempSync(join(tmpdir(), 'plumbline-clock-'));
writeFileSync(join(folder, 'clock'), NOW.toISOString());
process.env.PLUMBLINE_CLOCK_FILE = join(folder, 'clock');
process.env.PLUMBLINE_PUSH_LOCAL = '1';
afterAll(() => {
  delete process.env.PLUMBLINE_CLOCK_FILE;
  rmSync(folder, { recursive: true });
});

test('the job after words hands them over, once when it runs twice, in its own team only', async () => {
  const service = await openPushService();
  const { actor, clientId, team, rungs } = await aPhone('Job');
  await addNoticePhone(actor, service.phone('job'), NOW);
  const body = aTraining({ actor, clientId, team, rungs });
  await submitCheckIn(actor, body, NOW);
  const words = { set: null, text: 'Heels nearer.' };
  const { wordId } = await sayOnCheckIn(leadOf(team), { clientId, checkInId: body.id, words }, NOW);
  const run = async (payload: unknown) => HANDLERS.get('deliver-notices')?.(payload);
  await run({ teamId: crypto.randomUUID(), after: wordId });
  expect(service.pushed).toEqual([]);
  await run({ teamId: team.teamId, after: wordId });
  await run({ teamId: team.teamId, after: wordId });
  expect(service.pushed.map((each) => each.path)).toEqual(['/phone/job']);
  await expect(run({ teamId: team.teamId })).rejects.toThrow(/after/);
  await service.close();
});
