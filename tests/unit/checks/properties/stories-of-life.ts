import { DANGER_SIGNS, type PainRegion } from '#lib/domain/vocabulary.ts';
import { aPain, day } from '#tests/fixtures/history-builders.ts';
import { drillOf, from, instant, sore, type Teller } from './draft.ts';

const REGIONS: PainRegion[] = [
  'wrist-back',
  'elbow-inner',
  'shoulder-front',
  'elbow-back',
  'wrist-palm-side',
];

const LIMIT = {
  tissue: null,
  region: null,
  side: null,
  rule: 'reduced' as const,
  percent: 50,
  who: 'coach',
};

/** What hurts, what is asked, waited for, ruled out and agreed. */
export const OF_LIFE = {
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
  standing: (draft, { size }) => {
    const all = ['paused', 'left', 'starting', 'ending', 'back'] as const;
    draft.history.client.standing = all[size % all.length] ?? 'in-training';
  },
  hours: (draft, { size }) => {
    const days = size % 2 === 0 ? [1, 2, 3, 4, 5] : [2, 4, 6, 7];
    draft.history.answering = { zone: draft.base.zone, days, from: '08:00', to: '20:00' };
  },
} satisfies Record<string, Teller>;
