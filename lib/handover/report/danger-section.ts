import { counted } from '#lib/checks/words.ts';
import { DANGER_SIGN_LABELS, placeInWords } from '#lib/domain/labels.ts';
import type { Block } from './blocks.ts';
import type { ReportInput } from './input.ts';
import { day, heading, table, text } from './say.ts';

/** Danger signs: that they were asked, how often, and what was answered. */
export function dangerBlocks({ history, period }: ReportInput): Block[] {
  const asked = history.checkIns.filter((one) => one.date >= period.from && one.date <= period.to);
  const told = asked.flatMap((one) => one.dangerSigns.map((sign) => ({ ...sign, date: one.date })));
  return [
    heading(3, 'Danger signs'),
    text(
      `Every check-in asks for danger signs: numbness or tingling, weakness, pain at rest or at night, swelling, a fall or a pop, dizziness or trouble seeing, chest pain, fainting and the others. ${counted(asked.length, 'check-in')} in the period; ${told.length === 0 ? 'no sign was told.' : `${counted(told.length, 'sign')} told. A sign that is not in this list was not told.`}`,
    ),
    ...(told.length === 0
      ? []
      : [
          table(
            'Danger signs told',
            'danger_signs.csv',
            ['Date', 'Sign', 'Gone within a minute', 'Place'],
            told.map((one) => [
              day(one.date),
              DANGER_SIGN_LABELS[one.sign],
              one.goneWithinMinute ? 'yes' : 'no',
              one.region ? placeInWords(one.region, one.side) : '',
            ]),
          ),
        ]),
  ];
}
