import type { Outcome, Subject } from '#lib/domain/finding.ts';
import type { HistoryQuestion } from '#lib/domain/history.ts';
import { reaches } from '../compare.ts';
import { isResting } from '../contact-silence.ts';
import { findingOf } from '../finding-of.ts';
import { questionHours, wholeHours } from '../question-hours.ts';
import type { Limits } from '../thresholds.ts';
import type { Check, ClientView } from '../types.ts';
import { counted } from '../words.ts';

const SUBJECT: Subject = { key: 'questions', label: '' };

type Waiting = { question: HistoryQuestion; hours: number; danger: boolean };

/**
 * Open questions by the hours waited inside the team's answering hours; round the clock where the words speak of a
 * danger sign, and where the team has told no hours. One reason a client, by the longest wait. Common practice.
 */
export const questionWaiting: Check = {
  kind: 'question-waiting',
  title: 'Question waiting',
  question: 'Has a question of this client waited for longer than a day of answering hours?',
  evaluate: (view, limits) => [judge(view, limits)],
};

function judge(view: ClientView, limits: Limits): Outcome {
  const [longest, ...others] = openQuestions(view, limits);
  const clear: Outcome = { status: 'clear', kind: 'question-waiting', subject: SUBJECT };
  if (!longest || !reaches(longest.hours, limits['questionWaiting.watchHours'])) return clear;
  const { question, danger } = longest;
  const hours = wholeHours(longest.hours);
  const waits = danger ? `${hours} h` : `${hours} h of answering hours`;
  const more = others.length > 0 ? `, and ${counted(others.length, 'more question')} open` : '';
  return findingOf(
    {
      kind: 'question-waiting',
      subject: SUBJECT,
      level: reaches(longest.hours, limits['questionWaiting.actHours']) ? 'act' : 'watch',
      sentence: `A question has waited **${waits}**: “${shortened(question.text)}”${more}.`,
      short: `question ${hours} h`,
      since: question.askedAt.slice(0, 10),
      step: {
        kind: 'answer',
        text: danger ? 'Answer now: the words speak of a danger sign' : 'Answer the question',
      },
      clears: 'An answer.',
      evidence: { question: question.id, hours, open: others.length + 1, dangerWords: danger },
      inputs: [
        { name: 'hours waited', value: hours, unit: 'h' },
        { name: 'open questions', value: others.length + 1, unit: '' },
      ],
      formula: danger
        ? 'Hours from the question to this night, round the clock: the words speak of a danger sign.'
        : 'Hours from the question to this night that fall into the team’s answering hours.',
      thresholds: ['questionWaiting.watchHours', 'questionWaiting.actHours'],
      doubt:
        'Words are searched for danger signs by a short list; it can miss some. Every question is shown in full.',
    },
    limits,
  );
}

/** Open questions, longest waiting first; none of a client who rests unless the words speak of danger. */
function openQuestions(view: ClientView, limits: Limits): Waiting[] {
  const { questions, answering } = view.history;
  return questions
    .filter((question) => question.askedAt <= view.asOf.instant)
    .filter((question) => question.answeredAt === null || question.answeredAt > view.asOf.instant)
    .map((question) => {
      const { hours, danger } = questionHours(question, view.asOf.instant, { answering, limits });
      return { question, danger, hours };
    })
    .filter(({ danger }) => danger || !isResting(view))
    .sort((a, b) => b.hours - a.hours || (a.question.id < b.question.id ? -1 : 1));
}

const SHOWN = 80;

function shortened(text: string): string {
  const line = text.replace(/\s+/g, ' ').trim();
  const letters = [...line];
  return letters.length > SHOWN
    ? `${letters
        .slice(0, SHOWN - 1)
        .join('')
        .trimEnd()}…`
    : line;
}
