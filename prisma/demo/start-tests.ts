import type { Side } from '#lib/domain/vocabulary.ts';
import type { StartAnswer } from '#lib/planning/start/start-types.ts';
import { demoDate, instantAt } from './calendar.ts';
import type { DemoClient } from './life.ts';
import { demoRung } from './rungs.ts';

type Said = [rung: string, side: Side, values: number[], over?: Partial<StartAnswer>];
/** Ids are keys of the starter library until they are written to a team. */
export type DemoStartTests = {
  aim: string;
  kit: string[];
  tests: { ladderId: string; rungId: string; sets: number; film: boolean }[];
  answers: StartAnswer[];
  words: string;
  askedAt: string;
  movedAt: string;
  doneAt: string | null;
};

const SETS: Record<string, number> = { 'X1.4': 1, 'X2.4': 1, 'H2.1': 2, 'H3.1': 2, 'H4.1': 2 };

/** The two newest clients: one has answered all that can be asked now, one half of it. */
export function demoStartTests({ history, extra }: DemoClient, today: string): DemoStartTests | undefined {
  const at = (week: number, day: number, time: string) =>
    instantAt(demoDate(today, week, day), time, history.client.zone);
  if (extra.slug === 'ilse')
    return {
      ...asked(['X1.4', 'X2.4', 'H1.2', 'H2.1', 'H2.3', 'H3.1', 'H4.1']),
      kit: ['box', 'block'],
      answers: [
        said(['X1.4', 'left', [165]]),
        said(['X1.4', 'right', [160]]),
        said(['X2.4', 'left', [80]]),
        said(['X2.4', 'right', [95]]),
        said(['H1.2', 'left', [3, 3, 3]]),
        said(['H1.2', 'right', [3, 2, 2], { clean: false }]),
        said(['H2.1', 'both', [60, 60]]),
        said(['H2.3', 'both', [42, 38, 35]]),
      ],
      words: 'Ranges first, warm. The rest on another day is fine.',
      askedAt: at(25, 3, '09:10'),
      movedAt: at(26, 5, '19:35'),
      doneAt: at(26, 5, '19:35'),
    };
  if (extra.slug === 'kwabena')
    return {
      ...asked(['X1.4', 'X2.4', 'H1.2', 'H2.1', 'H2.2']),
      kit: [],
      answers: [
        said(['X1.4', 'left', [150]]),
        said(['X1.4', 'right', [145]]),
        said(['H2.1', 'both', [35, 28]]),
      ],
      words: 'Take your time: three today, three tomorrow.',
      askedAt: at(26, 2, '08:40'),
      movedAt: at(26, 6, '18:20'),
      doneAt: null,
    };
  return undefined;
}

function asked(keys: string[]): Pick<DemoStartTests, 'aim' | 'tests'> {
  const tests = keys.map((rungId) => ({
    ladderId: demoRung(rungId).ladderId,
    rungId,
    sets: SETS[rungId] ?? 3,
    film: rungId === 'H2.3',
  }));
  return { aim: 'H5.1', tests };
}

function said([rungId, side, values, over = {}]: Said): StartAnswer {
  return {
    ladderId: demoRung(rungId).ladderId,
    rungId,
    side,
    outcome: 'done',
    values,
    tried: null,
    clean: true,
    pain: null,
    region: null,
    ...over,
  };
}
