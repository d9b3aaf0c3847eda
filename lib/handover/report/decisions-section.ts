import { asSentence } from '#lib/domain/labels.ts';
import { KIND_WORDS } from '#lib/views/board-words.ts';
import { limitInWords, untilInWords } from '#lib/views/limit-lines.ts';
import { plainSentence } from '#lib/views/sentence.ts';
import type { Block } from './blocks.ts';
import { draftNext } from './draft.ts';
import type { ReportInput } from './input.ts';
import { day, dayOf, heading, list, newest, number, table, tableOr, text } from './say.ts';
import { stepsOf } from './tried.ts';

const REASONS_LISTED = 40;
const QUESTIONS_LISTED = 20;

/** Limits and clinicians' words, plan versions, reasons and their outcomes, steps, questions, what would come next. */
export function decisionsSection(input: ReportInput): Block[] {
  return [
    ...limitBlocks(input),
    heading(2, 'Plan versions'),
    planTable(input),
    heading(2, 'Reasons, and how they ended'),
    reasonTable(input),
    heading(2, 'Steps taken'),
    stepTable(input),
    heading(2, 'Questions and answers'),
    questionTable(input),
    heading(2, 'What would come next'),
    ...nextBlocks(input),
  ];
}

function limitBlocks({ record, today }: ReportInput): Block[] {
  return [
    heading(2, 'Limits and clinicians’ words'),
    tableOr(
      'none was ever set in the period.',
      table(
        'Limits',
        'limits.csv',
        ['What holds', 'From', 'Last day', 'Said by', 'In their words'],
        record.limits.map((one) => [
          limitInWords(one),
          day(one.from),
          one.endedAt
            ? `ended ${one.endedAt.slice(0, 10)}`
            : one.until === null
              ? untilInWords(one, today)
              : day(one.until),
          one.who,
          one.words,
        ]),
      ),
    ),
    tableOr(
      'none is recorded.',
      table(
        'Clinicians’ words',
        'clinician_words.csv',
        ['Date', 'Place', 'Words', 'Look again on'],
        record.clinicianWords.map((one) => [
          day(one.date),
          [one.side, one.region].filter(Boolean).join(' ').replaceAll('-', ' '),
          one.words,
          day(one.reviewOn),
        ]),
      ),
    ),
    text(
      'To set a limit of your own, send the coach in writing: what is ruled out or reduced (a place or a kind of work), the side, to how many per cent of the sets, from when, until when, and your name. The coach enters it; from then on the plan and the phone go by it, and the coach is told before it ends.',
    ),
  ];
}

function planTable({ record, history }: ReportInput): Block {
  const versions = new Map(record.plans.map((row) => [row.version, row]));
  return tableOr(
    'none is written.',
    table(
      'Plan versions',
      'plans.csv',
      ['Version#', 'From', 'Last day', 'Sessions a week#', 'By', 'Why', 'Lines#'],
      [...versions.values()]
        .reverse()
        .map((plan) => [
          number(plan.version),
          day(plan.from),
          plan.until === null ? 'open' : day(plan.until),
          number(plan.sessionsPerWeek),
          plan.by ?? '',
          plan.why,
          number(record.plans.filter((row) => row.version === plan.version && row.rung !== null).length),
        ]),
      history.plans.length === 0 ? undefined : 'Every line of every version stands in the CSV.',
    ),
  );
}

function reasonTable({ record, history }: ReportInput): Block {
  const { shown, more } = newest(record.reasons, REASONS_LISTED);
  const verdictOf = (id: string) =>
    record.verdicts
      .filter((one) => one.reasonId === id)
      .map((one) => `${one.rightToTell ? 'right to tell' : 'not needed'}${one.text ? `: “${one.text}”` : ''}`)
      .join('; ');
  return tableOr(
    'the checks raised none in the period.',
    table(
      'Reasons',
      'reasons.csv',
      ['Kind', 'Since', 'What was said', 'How it ended', 'Verdict'],
      shown.map((one) => [
        asSentence(KIND_WORDS[one.kind] ?? one.kind),
        day(one.since),
        plainSentence(one.sentence),
        one.closedAt === null
          ? 'open'
          : `${dayOf(one.closedAt, history.client.zone)}: ${one.closedWhy ?? 'closed'}`,
        verdictOf(one.id),
      ]),
      more > 0 ? `${more} earlier ones stand in the CSV.` : undefined,
    ),
  );
}

function stepTable(input: ReportInput): Block {
  return tableOr(
    'none is on record.',
    table(
      'Steps taken',
      'steps_taken.csv',
      ['On', 'Step', 'For', 'Words', 'Better since'],
      stepsOf(input).map((one) => [
        day(one.takenOn),
        `${asSentence(one.step)}${one.undone ? ' (undone)' : ''}`,
        one.forWhat,
        one.words,
        one.outcome || 'not measured yet, or not followed',
      ]),
      'Better since is measured by fixed windows after the step; other things changed in the same weeks, so it tells no cause.',
    ),
  );
}

function questionTable({ record, history }: ReportInput): Block {
  const { zone } = history.client;
  const { shown, more } = newest(record.questions, QUESTIONS_LISTED);
  return tableOr(
    'none was asked in the period.',
    table(
      'Questions and answers',
      'questions.csv',
      ['Asked', 'Question', 'Answered', 'Answer'],
      shown.map((one) => [
        dayOf(one.askedAt, zone),
        one.text,
        one.answeredAt
          ? `${dayOf(one.answeredAt, zone)}${one.answeredBy ? `, ${one.answeredBy}` : ''}`
          : 'not yet',
        one.answer ?? '',
      ]),
      more > 0 ? `${more} earlier ones stand in the CSV.` : undefined,
    ),
  );
}

function nextBlocks(input: ReportInput): Block[] {
  const { words, about } = input;
  const computed = draftNext(input);
  return [
    ...(words.next ? [text(words.next, 'own-words'), text(`Written by ${about.madeBy}.`, 'small')] : []),
    ...(computed.length > 0
      ? [text('The checks propose, and say what would clear it:'), ...list(computed)]
      : [text('The checks propose nothing: no reason with a step is open.')]),
  ];
}
