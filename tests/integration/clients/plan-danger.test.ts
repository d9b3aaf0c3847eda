import { beforeAll, expect, test } from 'vitest';
import { loadPlanForm } from '#lib/usecases/load-plan-form.ts';
import { submitCheckIn } from '#lib/usecases/submit-check-in.ts';
import { aPhone, aTraining, NOW, type Phone } from '../check-in/arrange.ts';
import { leadOf } from './support.ts';

let phone: Phone;
beforeAll(async () => {
  phone = await aPhone('Numb');
});

test('the plan page knows of a danger sign, and what was told of it does not travel to the browser', async () => {
  const formOf = () => loadPlanForm(leadOf(phone.team), phone.clientId, NOW);
  expect((await formOf())?.dangers).toEqual([]);
  const numb = { sign: 'numb-or-tingling', region: 'hand-fingers', side: 'right' } as const;
  await submitCheckIn(
    phone.actor,
    aTraining(phone, { dangerSigns: [numb], words: 'since the push-ups' }),
    NOW,
  );
  const form = await formOf();
  expect(form?.dangers).toMatchObject([{ label: 'numb or tingling, right hand or fingers' }]);
  expect(form?.history.checkIns).toMatchObject([{ dangerSigns: [], words: '' }]);
});
