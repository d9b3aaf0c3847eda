import type { ClientHistory, HistoryCheckIn, HistorySet } from '#lib/domain/history.ts';
import { daysBetween } from '#lib/domain/local-date.ts';
import { DANGER_SIGNS, type PainRegion } from '#lib/domain/vocabulary.ts';
import { aPain, aPlanItem, day } from '#tests/fixtures/history-builders.ts';
import { askedOf, type Base, ladderIds, noise } from './world.ts';

/** What is going on in a client's life: a name and a few numbers that each story reads in its own way. */
export type Story = {
  name: StoryName;
  size: number;
  back: number;
  side: 'left' | 'right';
  one: boolean;
  other: boolean;
};
export type Draft = {
  base: Base;
  /** Index of the evening looked from. */
  last: number;
  calendar: ('train' | 'rest' | 'none')[];
  history: ClientHistory;
  /** Applied in order to every training check-in. */
  changes: ((checkIn: HistoryCheckIn, at: number) => HistoryCheckIn)[];
};
type Teller = (draft: Draft, story: Story) => void;

const REGIONS: PainRegion[] = [
  'wrist-back',
  'elbow-inner',
  'shoulder-front',
  'elbow-back',
  'wrist-palm-side',
];

function put(draft: Draft, from: number, to: number, what: 'train' | 'rest' | 'none'): void {
  for (let at = Math.max(0, from); at <= Math.min(to, draft.last); at += 1) draft.calendar[at] = what;
}

function from(draft: Draft, first: number, change: (checkIn: HistoryCheckIn, at: number) => HistoryCheckIn) {
  draft.changes.push((checkIn, at) => (at >= first ? change(checkIn, at) : checkIn));
}

function eachSet(checkIn: HistoryCheckIn, change: (set: HistorySet) => HistorySet): HistoryCheckIn {
  return { ...checkIn, sets: checkIn.sets.map(change) };
}

/** As many sets again, up to `times` as many. */
function moreSets(checkIn: HistoryCheckIn, of: (set: HistorySet) => boolean, times: number): HistoryCheckIn {
  const more = checkIn.sets
    .filter(of)
    .flatMap((set) =>
      Array.from({ length: times - 1 }, (_, at) => ({ ...set, index: set.index + 20 * (at + 1) })),
    );
  return { ...checkIn, sets: [...checkIn.sets, ...more] };
}

function sore(checkIn: HistoryCheckIn, pain: HistoryCheckIn['pain']): HistoryCheckIn {
  return { ...checkIn, nothingHurts: false, pain: [...checkIn.pain, ...pain] };
}

const instant = (at: number, hour = 12) => `${day(at)}T${String(hour).padStart(2, '0')}:00:00.000Z`;
const drillOf = (draft: Draft, { size }: Story) => ladderIds(draft.base)[size % draft.base.ladders] ?? '';

export const STORIES = {
  jump: (draft, { size, one }) =>
    from(draft, draft.last - 6, (checkIn) => {
      const bigger = { ...checkIn, minutes: Math.round((checkIn.minutes ?? 0) * (1.4 + size / 5)) };
      return one ? moreSets(bigger, () => true, 2) : bigger;
    }),
  stacked: (draft, { size }) =>
    from(draft, draft.last - 9 - (size % 6), (checkIn) => moreSets(checkIn, () => true, 2)),
  hardest: (draft, { size, one, side, other }) =>
    from(draft, draft.last - 5, (checkIn) =>
      eachSet(checkIn, (set) =>
        other && set.side !== 'both' && set.side !== side
          ? set
          : one
            ? { ...set, addedKg: 15 + size }
            : { ...set, rungId: set.rungId.replace('-1', '-2') },
      ),
    ),
  daily: (draft, { size, one }) => {
    put(draft, draft.last - 7 - size, draft.last, 'train');
    if (!one) return;
    from(draft, draft.last - 9, (checkIn, at) =>
      at % 4 < 2 ? moreSets({ ...checkIn, effort: 9, minutes: 110 }, () => true, 2) : checkIn,
    );
  },
  alike: (draft) => {
    put(draft, draft.last - 8, draft.last, 'train');
    from(draft, draft.last - 8, (checkIn) => ({ ...checkIn, effort: 6, minutes: 60 }));
  },
  away: (draft, { size, back, one, other }) => {
    const returned = draft.last - back;
    const left = returned - 10 - size * (other ? 4 : 1);
    put(draft, left, returned - 1, 'none');
    put(draft, returned, draft.last, 'train');
    if (one) draft.history.absences.push({ from: day(left), to: day(returned - 1), kind: 'holiday' });
  },
  stillAway: (draft, { size, back }) => {
    put(draft, draft.last - 11 - size, draft.last, 'none');
    const to = day(draft.last + (back % 4));
    draft.history.absences.push({ from: day(draft.last - 11 - size), to, kind: 'illness' });
  },
  pain: (draft, { size, back, side, one, other }) => {
    const region = REGIONS[size % REGIONS.length] ?? 'neck';
    const first = draft.last - 8 - back * 3;
    from(draft, first, (checkIn, at) => {
      const value = one ? Math.min(8, 1 + Math.floor((at - first) / 3)) : 2 + (at % 3);
      const morning = other ? [aPain(Math.max(0, value - 1), { region, side, moment: 'morning' })] : [];
      return sore(checkIn, [aPain(value, { region, side }), ...morning]);
    });
    if (back % 3 === 0) draft.history.client.intakePain.push({ region, side, value: 3, sinceWeeks: back });
  },
  high: (draft, { size, back, side, one, other }) => {
    const region = REGIONS[size % REGIONS.length] ?? 'neck';
    from(draft, draft.last - back - 1, (checkIn, at) =>
      at <= draft.last - back + 1
        ? sore(checkIn, [aPain(6 + (size % 4), { region, side, usual: one || at % 2 === 0 })])
        : checkIn,
    );
    if (!other) return;
    const until = day(draft.last + 20);
    draft.history.clinicianWords.push({
      date: day(draft.last - back - 3),
      region,
      side,
      words: 'May train.',
    });
    draft.history.limits.push({ ...LIMIT, region, side, from: day(draft.last - back - 3), until });
  },
  danger: (draft, { size, back, side, one, other }) => {
    const first = draft.last - back * (size > 4 ? 3 : 1) - 2;
    from(draft, first, (checkIn, at) => {
      // After it, some say nothing more about what hurts.
      if (at > first + 2) return size > 6 ? { ...checkIn, nothingHurts: false } : checkIn;
      const sign = DANGER_SIGNS[size % 3] ?? 'swelling';
      const place = other ? { region: 'elbow-inner' as const, side } : { region: null, side: null };
      const dangerSigns = [...checkIn.dangerSigns, { sign, goneWithinMinute: one, ...place }];
      return { ...checkIn, nothingHurts: false, dangerSigns };
    });
  },
  grass: (draft, { size, back, side }) =>
    from(draft, draft.last - 8 - back, (checkIn, at) => {
      if (at < draft.last - 5) return { ...checkIn, ground: 'grass' };
      return sore(checkIn, [aPain(2 + (size % 4), { region: 'wrist-back', side })]);
    }),
  behind: (draft, { size, side }) =>
    from(draft, draft.last - 56, (checkIn) =>
      eachSet(checkIn, (set) =>
        set.side === side ? { ...set, value: Math.round((set.value ?? 0) * (0.9 - size * 0.05)) } : set,
      ),
    ),
  fault: (draft, { size, side }) =>
    from(draft, draft.last - 42, (checkIn, at) =>
      eachSet(checkIn, (set) => {
        const bad = set.side === side && noise(draft.base.seed, at, set.index, 7) < 0.5 + size / 20;
        return bad ? { ...set, faults: ['hips-turn'], clean: false } : set;
      }),
    ),
  stuck: (draft, { one }) => {
    replan(draft, 1, 0);
    from(draft, 0, (checkIn) =>
      eachSet(checkIn, (set) => {
        const planned = targetOf(draft, set);
        const value =
          set.tried === null ? Math.min(planned * 0.9, set.value ?? 0) : Math.min(6, set.value ?? 0);
        return { ...set, planned: one ? planned : null, value };
      }),
    );
  },
  slips: (draft, { size, back }) =>
    from(draft, draft.last - 6 - back, (checkIn) =>
      eachSet(checkIn, (set) => ({ ...set, value: Math.floor((set.value ?? 0) * (0.8 - size * 0.05)) })),
    ),
  earns: (draft, { back }) =>
    from(draft, draft.last - 6 - back, (checkIn) =>
      eachSet(checkIn, (set) => ({ ...set, clean: true, value: targetOf(draft, set) })),
    ),
  tooHard: (draft, { size, back, one }) =>
    from(draft, draft.last - 8 - back, (checkIn, at) =>
      eachSet(checkIn, (set) =>
        noise(draft.base.seed, at, set.index, 5) < 0.4 + size / 20
          ? { ...set, clean: one && set.clean, value: one ? 1 : set.value }
          : set,
      ),
    ),
  outgrown: (draft, { back, size }) => {
    replan(draft, 0.6, draft.last - 14 - back);
    from(draft, draft.last - 14 - back, (checkIn) =>
      eachSet({ ...checkIn, effort: 3 + (size % 5) }, (set) => {
        const planned = set.tried === null ? targetOf(draft, set, 0.6) : set.planned;
        return { ...set, clean: true, planned, value: planned };
      }),
    );
  },
  leavesOut: (draft, story) => {
    const left = drillOf(draft, story);
    from(draft, draft.last - 27, (checkIn, at) =>
      noise(draft.base.seed, at, 9) < story.back / 30
        ? checkIn
        : { ...checkIn, sets: checkIn.sets.filter((set) => set.rungId !== `${left}-1`) },
    );
  },
  window: (draft, { size, one }) =>
    from(draft, draft.last - 41, (checkIn) =>
      eachSet(checkIn, (set) =>
        set.rungId === (one ? 'heel-1' : 'toe-1')
          ? { ...set, value: Math.round((set.value ?? 0) * (0.75 - size * 0.05)) }
          : set,
      ),
    ),
  quiet: (draft, { size }) => put(draft, draft.last - 3 - size * 2, draft.last, 'none'),
  fades: (draft, { size }) => {
    for (let at = Math.max(0, draft.last - 27); at <= draft.last; at += 1)
      if (noise(draft.base.seed, at, 11) < 0.7 + size / 40) put(draft, at, at, 'none');
  },
  asks: (draft, { back, size, one }) =>
    draft.history.questions.push({
      id: `question-${back}-${size}`,
      askedAt: instant(draft.last - (back % 5), 6 + size),
      text: size % 3 === 0 ? 'My hand goes numb, is that fine?' : 'Straps or no straps on the bar today?',
      answeredAt: one && size > 5 ? instant(draft.last) : null,
      answer: one && size > 5 ? 'No straps.' : null,
    }),
  films: (draft, { back, size, one, other }) => {
    draft.history.films = [
      ...(draft.history.films ?? []),
      {
        id: `film-${back}-${size}`,
        askedAt: instant(draft.last - 3 - back),
        receivedAt: one ? instant(draft.last - (back % 4)) : null,
        lookedAt: one && other && size > 5 ? instant(draft.last) : null,
        words: size % 2 === 0 ? 'from behind' : '',
      },
    ];
  },
  planEnds: (draft, { size }) => {
    for (const plan of draft.history.plans) plan.until = day(draft.last + size - 2);
  },
  unseen: (draft, { size, one }) => {
    draft.history.seen = one ? [] : [instant(draft.last - size * 4)];
  },
  limited: (draft, { size, back, side, one, other }) => {
    const limit = {
      ...LIMIT,
      ...(one ? { region: 'wrist-back' as const, side } : { tissue: 'elbow-bending' as const }),
      from: day(draft.last - back * 2),
      until: size === 9 ? null : day(draft.last + size - 2),
    };
    draft.history.limits.push(limit);
    // Said twice: by the coach, and later by somebody else.
    if (other) draft.history.limits.push({ ...limit, who: 'physio', from: day(draft.last + 1 - back) });
  },
  goals: (draft, { size }) => {
    for (const plan of draft.history.plans)
      plan.skillsInFocus = ['Planche', 'Front lever', 'Press', 'Split'].slice(0, 1 + (size % 4));
  },
  word: (draft, { back, side, one }) =>
    draft.history.clinicianWords.push({
      date: day(draft.last - back * 2),
      region: one ? null : 'elbow-inner',
      side: one ? null : side,
      words: 'Fine to go on.',
    }),
  step: (draft, story) =>
    draft.history.steps.push({
      kind: 'hold',
      takenOn: day(draft.last - story.back * 4),
      ladderId: drillOf(draft, story),
      side: story.one ? story.side : 'both',
      reviewOn: story.other ? day(draft.last + 5 - story.back) : null,
      words: '',
    }),
  apart: (draft, { size, side }) =>
    draft.history.placements.push({ ladderId: 'one-arm', side, rungId: 'one-arm-2', from: day(size * 3) }),
  easy: (draft, { back, one }) => {
    const week = day(draft.last - 3 - back * 4);
    for (const plan of draft.history.plans) plan[one ? 'easyWeeks' : 'testWeeks'].push(week);
  },
  accepted: (draft, { size }) => {
    for (const plan of draft.history.plans) plan.acceptedWeekAu = 600 + size * 200;
  },
  forgets: (draft, { size, one }) =>
    from(draft, draft.last - 30, (checkIn, at) => {
      if (noise(draft.base.seed, at, 13) > 0.2 + size / 20) return checkIn;
      return one ? { ...checkIn, effort: null } : { ...checkIn, nothingHurts: false };
    }),
  standing: (draft, { size }) => {
    const all = ['paused', 'left', 'starting', 'ending', 'back'] as const;
    draft.history.client.standing = all[size % all.length] ?? 'in-training';
  },
  neverCame: (draft, { one }) => {
    put(draft, 0, draft.last, 'none');
    if (!one) return;
    draft.history.client.joinedAt = null;
    draft.history.client.standing = 'invited';
  },
  hours: (draft, { size }) => {
    const days = size % 2 === 0 ? [1, 2, 3, 4, 5] : [2, 4, 6, 7];
    draft.history.answering = { zone: draft.base.zone, days, from: '08:00', to: '20:00' };
  },
} satisfies Record<string, Teller>;

export type StoryName = keyof typeof STORIES;

const LIMIT = {
  tissue: null,
  region: null,
  side: null,
  rule: 'reduced' as const,
  percent: 50,
  who: 'coach',
};

/** A new plan from a day on that asks another share of the pass mark. */
function replan(draft: Draft, share: number, first: number): void {
  const { plans, rungs } = draft.history;
  const old = plans.at(-1);
  if (!old) return;
  const items = old.items.map((item) => {
    const rung = rungs.find((each) => each.id === item.rungId);
    return aPlanItem({ ...item, target: rung ? askedOf(rung, share) : item.target });
  });
  plans.push({ ...old, version: old.version + 1, from: day(Math.max(0, first)), items });
}

function targetOf(draft: Draft, set: HistorySet, share = 1): number {
  const rung = draft.history.rungs.find((each) => each.id === set.rungId);
  return rung ? askedOf(rung, share) : 1;
}

export function dayOf(checkIn: HistoryCheckIn): number {
  return daysBetween(day(0), checkIn.date);
}
