import { randomUUID } from 'node:crypto';
import { expect, test } from 'vitest';
import { draftOf } from '#app/(client)/_phone/draft.ts';
import { toBody } from '#app/(client)/_phone/to-body.ts';
import { groupOfRegion } from '#lib/domain/pain-groups.ts';
import { checkInSchema } from '#lib/schemas/check-in.ts';
import { loadOwnCheckIn } from '#lib/usecases/load-own-check-in.ts';
import { submitCheckIn } from '#lib/usecases/submit-check-in.ts';
import { aPhone, aTraining, NOW } from './arrange.ts';

test('opened again and sent unchanged, what was not planned is still not planned', async () => {
  const phone = await aPhone('Correcting');
  const [planned, other] = [phone.rungs.get('H3.4') ?? '', phone.rungs.get('H3.3') ?? ''];
  const set = { side: 'both', how: 'typed', value: 12 } as const;
  const sets = [
    { ...set, rungId: planned, index: 1, planned: 20 },
    { ...set, rungId: planned, index: 2, planned: 20, value: 20, how: 'as-planned' as const },
    { ...set, rungId: planned, index: 3, planned: null },
    { ...set, rungId: other, index: 1, planned: null, value: 31, how: 'timed' as const },
  ];
  const first = aTraining(phone, { sets });
  await submitCheckIn(phone.actor, first, NOW);

  const { checkIn, sessions } = await loadOwnCheckIn(phone.actor, first.id);
  const draft = draftOf(checkIn, { id: randomUUID(), groupOf: groupOfRegion, now: NOW });
  const body = checkInSchema.parse(toBody(draft, sessions[0] ?? null, NOW));
  expect(body.correctsId).toBe(first.id);
  expect(body.sets).toHaveLength(4);
  expect(body.sets).toEqual(expect.arrayContaining(first.sets));
  await submitCheckIn(phone.actor, body, NOW);
});
