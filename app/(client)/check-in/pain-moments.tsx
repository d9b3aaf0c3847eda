'use client';
import { useState } from 'react';
import { cautionsOf } from '#lib/domain/caution.ts';
import { asSentence } from '#lib/domain/labels.ts';
import { PAIN_GROUPS } from '#lib/domain/pain-groups.ts';
import type { PainMoment } from '#lib/domain/vocabulary.ts';
import { dayAsSaid } from '#lib/views/phone-dates.ts';
import type { PlaceDraft } from '../_phone/draft.ts';
import { useUnder18 } from '../_phone/under18.ts';
import { CautionBox } from './caution-box.tsx';
import { Tenths } from './tenths.tsx';

type Props = {
  kind: 'training' | 'rest';
  place: PlaceDraft;
  coach: string;
  /** The last score of this place, from an earlier check-in. */
  before: { value: number; date: string } | undefined;
  today: string;
  onScores: (scores: PlaceDraft['scores']) => void;
};

const PAIN_WORDS = { 0: 'none', 10: 'worst' };
const MOMENTS: Record<Props['kind'], { moment: PainMoment; title: string }[]> = {
  training: [
    { moment: 'during', title: 'Worst while training' },
    { moment: 'after', title: 'After training' },
  ],
  rest: [{ moment: 'today', title: 'Worst today' }],
};
const MORNING = { moment: 'morning', title: 'This morning, getting up' } as const;

/** The scores of one place. The caution stands right under the score that asks for it, before anything is sent. */
export function PainMoments({ kind, place, coach, before, today, onScores }: Props) {
  const [hasMorning, setHasMorning] = useState(place.scores.morning !== undefined);
  const moments = hasMorning ? [...MOMENTS[kind], MORNING] : MOMENTS[kind];
  const under18 = useUnder18();
  const cautions = (moment: PainMoment | null) => cautionsFor(place, moment, under18);
  const warnedAt = moments.find(({ moment }) => cautions(moment).length > 0)?.moment;
  return (
    <>
      {moments.map(({ moment, title }, at) => (
        <div key={moment} className="pain-moment">
          <div className="between">
            <h2>{title}</h2>
            <span className="quiet">{at > 0 ? 'may be left out' : earlier(before, today)}</span>
          </div>
          <Tenths
            name={title}
            value={place.scores[moment] ?? null}
            words={PAIN_WORDS}
            onChange={(value) => onScores(withScore(place, moment, value))}
          />
          {moment === warnedAt ? <CautionBox cautions={cautions(null)} coach={coach} /> : null}
        </div>
      ))}
      {hasMorning ? null : (
        <button type="button" className="word-act" onClick={() => setHasMorning(true)}>
          This morning too
        </button>
      )}
    </>
  );
}

function earlier(before: Props['before'], today: string): string {
  return before ? `${asSentence(dayAsSaid(before.date, today))}: ${before.value}` : '';
}

function withScore(place: PlaceDraft, moment: PainMoment, value: number | null): PlaceDraft['scores'] {
  const { [moment]: _, ...others } = place.scores;
  return value === null ? others : { ...others, [moment]: value };
}

/** For one moment, or all of them. As long as the kind is not told, a high score is taken for the serious kind. */
function cautionsFor(
  { region, side, kind, scores, group }: PlaceDraft,
  moment: PainMoment | null,
  under18: boolean,
) {
  const where = region ?? PAIN_GROUPS.find((one) => one.key === group)?.regions[0] ?? 'hand-fingers';
  const pain = Object.entries(scores)
    .filter(([of]) => moment === null || of === moment)
    .map(([, value]) => ({ region: where, side, kind: kind ?? ('joint' as const), value }));
  return cautionsOf({ pain, dangerSigns: [] }, under18);
}
