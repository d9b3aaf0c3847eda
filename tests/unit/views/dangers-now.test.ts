import { expect, it } from 'vitest';
import { buildView } from '#lib/checks/view.ts';
import type { ClientHistory, HistoryCheckIn } from '#lib/domain/history.ts';
import { dangersNow } from '#lib/views/dangers-now.ts';
import { aCheckIn, aHistory, day, evening } from '#tests/fixtures/history-builders.ts';

const NUMB = {
  sign: 'numb-or-tingling',
  goneWithinMinute: false,
  region: 'hand-fingers',
  side: 'right',
} as const;
const told = aCheckIn(6, { dangerSigns: [NUMB] });
const now = (checkIns: HistoryCheckIn[], clinicianWords: ClientHistory['clinicianWords'] = []) =>
  dangersNow(buildView(aHistory({ checkIns, clinicianWords }), evening(9)));

it('says the sign, the day and what to do first, until it is cleared', () => {
  expect(now([told])).toEqual([
    {
      label: 'numb or tingling, right hand or fingers',
      sentence: 'Numb or tingling, right hand or fingers on Sun 8 Mar.',
      step: 'Stop the work that brings it on; to a licensed clinician before it goes on',
    },
  ]);
  expect(now([told, ...[7, 8].map((days) => aCheckIn(days, { nothingHurts: true }))])).toEqual([]);
  expect(now([aCheckIn(6)])).toEqual([]);
});

it('ends with a word of a clinician about it', () => {
  const word = { date: day(8), region: 'hand-fingers', side: 'right', words: 'may train on bars' } as const;
  expect(now([told], [word])).toEqual([]);
});
