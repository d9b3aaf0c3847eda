import type { PackContent } from '#lib/handover/pack-content.ts';
import type { DemoClient } from '#prisma/demo/life.ts';
import { haruto } from '#prisma/demo/named/haruto.ts';
import { contentOf } from '#tests/fixtures/pack-content.ts';

let made: DemoClient | undefined;

/** A demo client's content with the decisions of a coach beside the history. */
export function demoContent(): PackContent {
  made ??= haruto('2026-11-25');
  const { history, extra } = made;
  return contentOf(history, {
    about: {
      goal: extra.goal,
      birthYear: extra.birthYear,
      usualSessionMinutes: extra.sessionMinutes,
    },
    record: {
      reasons: [
        reason(
          'r-1',
          'pain-rising',
          '2026-08-14',
          'Right inner elbow **4** of 10, up from a median of **1**.',
          true,
        ),
        reason('r-2', 'plan-ending', '2026-11-20', 'The plan ends on Sun 29 Nov.', false),
      ],
      verdicts: [
        {
          reasonId: 'r-1',
          at: '2026-08-20T09:00:00.000Z',
          by: 'Ines',
          rightToTell: true,
          text: 'It was the pulling.',
        },
      ],
      steps: [
        step('r-1', 'cut-volume', '2026-08-15', 'Pulling at half', 14, 'same'),
        step('r-1', 'cut-volume', '2026-08-15', 'Pulling at half', 28, 'better'),
      ],
      questions: [
        {
          id: 'q-1',
          askedAt: '2026-11-24T18:00:00.000Z',
          text: 'May I train on bars while travelling?',
          answeredAt: null,
          answeredBy: null,
          answer: null,
          stills: ['s-1', 'gone'],
        },
      ],
      intake: [
        { about: 'kit', told: 'rings, hard floor, wall', completedAt: '2026-05-28T06:00:00.000Z' },
        { about: 'health', told: 'no surgery, no medicines; left wrist broken at 19', completedAt: null },
        { about: 'training', told: 'daily; gymnastics club twice a week besides', completedAt: null },
      ],
      consents: [
        {
          kind: 'health-data',
          textVersion: '1',
          givenAt: '2026-05-28T06:00:00.000Z',
          withdrawnAt: null,
          givenBy: history.client.name,
        },
        {
          kind: 'share-with-next-coach',
          textVersion: '1',
          givenAt: '2026-05-28T06:00:00.000Z',
          withdrawnAt: null,
          givenBy: history.client.name,
        },
      ],
      notes: [{ at: '2026-08-20T09:00:00.000Z', by: 'Ines', text: 'Only for coaches: exams in June.' }],
    },
  });
}

function reason(
  id: string,
  kind: 'pain-rising' | 'plan-ending',
  since: string,
  sentence: string,
  closed: boolean,
) {
  return {
    id,
    kind,
    subject: 'right elbow, inner',
    level: 'act' as const,
    tier: 'today' as const,
    points: 60,
    sentence,
    short: 'elbow up',
    proposedStep: closed ? 'Cut the pulling by half' : 'Write the next plan',
    clears: closed ? 'two check-ins of 3 or less' : 'a plan after the last day',
    since,
    raisedAt: `${since}T09:00:00.000Z`,
    closedAt: closed ? '2026-09-10T09:00:00.000Z' : null,
    closedWhy: closed ? '2 clear nights' : null,
    state: closed ? 'closed' : 'open',
  };
}

function step(
  reasonId: string,
  kind: string,
  takenOn: string,
  words: string,
  windowDays: number,
  outcome: string,
) {
  return { reasonId, kind, takenOn, reviewOn: '2026-08-29', words, undoneAt: null, windowDays, outcome };
}
