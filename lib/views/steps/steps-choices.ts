import { windowsOf } from '#lib/checks/better-since/windows.ts';
import { DEFAULT_LIMITS } from '#lib/checks/thresholds.ts';
import { asSentence } from '#lib/domain/labels.ts';
import { CHECK_KINDS, type CheckKind } from '#lib/domain/vocabulary.ts';
import { KIND_WORDS } from '../board-words.ts';
import { PERIOD_WORDS, STEP_PERIODS, type StepPeriod } from './step-period.ts';

type Chosen = { period: StepPeriod; coach?: string | undefined; kind?: CheckKind | undefined };

/** The three choices of the page of steps: when, whose clients, for which reason. Only kinds that are followed. */
export function stepsChoices(chosen: Chosen, coaches: readonly { id: string; name: string }[]) {
  const kinds = CHECK_KINDS.filter((kind) => windowsOf(kind, DEFAULT_LIMITS).length > 0);
  return [
    {
      name: 'period',
      label: 'Taken in',
      value: chosen.period,
      options: STEP_PERIODS.map((period) => ({ value: period, words: PERIOD_WORDS[period] })),
    },
    {
      name: 'coach',
      label: 'Whose clients',
      value: chosen.coach ?? '',
      options: [
        { value: '', words: 'All clients' },
        ...coaches.map(({ id, name }) => ({ value: id, words: name })),
      ],
    },
    {
      name: 'kind',
      label: 'Taken for',
      value: chosen.kind ?? '',
      options: [
        { value: '', words: 'Every reason' },
        ...kinds.map((kind) => ({ value: kind, words: asSentence(KIND_WORDS[kind]) })),
      ],
    },
  ];
}
