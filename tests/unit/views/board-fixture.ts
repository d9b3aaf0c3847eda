import type { BoardClient, BoardInput, BoardReason } from '#lib/views/board-types.ts';

/** Wednesday 25 November 2026; the last night is Tuesday's. */
export const TODAY = '2026-11-25';
export const LAST_NIGHT = '2026-11-24';

export function aClient(over: Partial<BoardClient> & { id: string }): BoardClient {
  return {
    name: `Client ${over.id}`,
    coachId: 'coach-1',
    standing: 'in-training',
    questions: [],
    notChecked: null,
    firstDay: '2026-02-02',
    dates: [],
    ...over,
  };
}

export function aQuestion(
  over: Partial<BoardClient['questions'][number]> = {},
): BoardClient['questions'][number] {
  const asked = { askedOn: TODAY, askedAt: `${TODAY}T06:00:00.000Z` };
  return { id: 'q', text: 'Bars or floor?', ...asked, stills: [], ...over };
}

let count = 0;

export function aReason(over: Partial<BoardReason> & { clientId: string }): BoardReason {
  count += 1;
  return {
    id: `reason-${count}`,
    kind: 'stalled',
    ladderId: 'ladder-1',
    level: 'watch',
    points: 1,
    tier: 'this-week',
    sentence: 'Toe pull 3 x 20 s for **52 days**, usual 24.',
    short: 'toe pull 52 days',
    since: '2026-11-20',
    raisedAt: '2026-11-21T03:10:00.000Z',
    raisedOn: (over.raisedAt ?? '2026-11-21').slice(0, 10),
    step: 'One rung back for three weeks.',
    clears: 'the rung changes',
    daysKnown: null,
    state: 'open',
    asideUntil: null,
    withClientUntil: null,
    knownWords: null,
    ...over,
  };
}

export function painHigh(clientId: string, over: Partial<BoardReason> = {}): BoardReason {
  return aReason({
    clientId,
    kind: 'pain-high',
    level: 'act',
    points: 3,
    tier: 'now',
    sentence: 'Right elbow **6 of 10** on Tuesday, up from 2.',
    short: 'right elbow 6',
    ...over,
  });
}

export function anInput(over: Partial<BoardInput> = {}): BoardInput {
  return {
    today: TODAY,
    skills: ['Handstand', 'Planche'],
    ofSkill: null,
    clients: [],
    reasons: [],
    coaches: [{ id: 'coach-1', name: 'Ines Halloran' }],
    night: {
      localDate: LAST_NIGHT,
      endedAt: '05:12',
      endedOn: TODAY,
      due: 3,
      done: 3,
      failed: 0,
      later: 0,
      late: false,
    },
    filter: {},
    ...over,
  };
}
