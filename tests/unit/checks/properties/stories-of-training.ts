import { day } from '#tests/fixtures/history-builders.ts';
import { drillOf, eachSet, from, moreSets, put, replan, type Teller, targetOf } from './draft.ts';
import { noise } from './world.ts';

/** What is done: days, sets, results, and what is left out of them. */
export const OF_TRAINING = {
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
  neverCame: (draft, { one }) => {
    put(draft, 0, draft.last, 'none');
    if (!one) return;
    draft.history.client.joinedAt = null;
    draft.history.client.standing = 'invited';
  },
} satisfies Record<string, Teller>;
