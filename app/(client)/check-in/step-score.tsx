'use client';
import { cautionsOf } from '#lib/domain/caution.ts';
import { asSentence, PAIN_KIND_LABELS, REGION_LABELS } from '#lib/domain/labels.ts';
import { groupInWords, PAIN_GROUPS } from '#lib/domain/pain-groups.ts';
import { PAIN_KINDS, type PainMoment } from '#lib/domain/vocabulary.ts';
import { dayAsSaid } from '#lib/views/phone-dates.ts';
import type { Draft, PlaceDraft } from '../_phone/draft.ts';
import { CautionBox } from './caution-box.tsx';
import { Choice } from './choice.tsx';
import { DangerSigns } from './danger-signs.tsx';
import { Tenths } from './tenths.tsx';
import type { Change, ScreenProps } from './use-draft.ts';

type Props = {
  draft: Draft;
  change: Change;
  send: () => void;
  coach: string;
  lastPain: ScreenProps['lastPain'];
  today: string;
};

const PAIN_WORDS = { 0: 'none', 10: 'worst' };
const KIND_OPTIONS = PAIN_KINDS.map((value) => ({ value, label: asSentence(PAIN_KIND_LABELS[value]) }));
const USUAL_OPTIONS = [
  { value: true, label: 'The usual' },
  { value: false, label: 'New' },
];
const SIDE_OPTIONS = [
  { value: 'left', label: 'Left' },
  { value: 'middle', label: 'Middle' },
  { value: 'right', label: 'Right' },
] as const;
const MOMENTS: Record<'training' | 'rest', { moment: PainMoment; title: string }[]> = {
  training: [
    { moment: 'during', title: 'Worst while training' },
    { moment: 'after', title: 'After training' },
    { moment: 'morning', title: 'This morning' },
  ],
  rest: [
    { moment: 'today', title: 'Worst today' },
    { moment: 'morning', title: 'This morning' },
  ],
};

/** One place: what kind, how much and when; danger signs; the caution at once, before anything is sent. */
export function StepScore({ draft, change, send, coach, lastPain, today }: Props) {
  const place = draft.places[draft.placeAt];
  if (!place) return null;
  const put = (patch: Partial<PlaceDraft>) =>
    change({ places: draft.places.map((one, at) => (at === draft.placeAt ? { ...one, ...patch } : one)) });
  const regions = PAIN_GROUPS.find((group) => group.key === place.group)?.regions ?? [];
  const isPaired = PAIN_GROUPS.find((group) => group.key === place.group)?.paired ?? true;
  const before = lastPain.find((told) => told.region === place.region && told.side === place.side);
  const next = draft.places[draft.placeAt + 1];
  const missing = missingIn(place);
  return (
    <>
      <main>
        <h1 style={{ margin: '4px 0 8px' }}>{asSentence(groupInWords(place.group, place.side))}</h1>
        {isPaired ? null : (
          <Choice
            name="Side"
            options={SIDE_OPTIONS}
            value={place.side}
            columns={3}
            onChange={(side) => put({ side: side ?? 'middle' })}
          />
        )}
        {regions.length > 1 ? (
          <Choice
            name="Where exactly"
            options={regions.map((value) => ({ value, label: exactly(value) }))}
            value={place.region}
            columns={2}
            onChange={(region) => put({ region })}
          />
        ) : null}
        <h2 style={{ marginTop: 16 }}>What kind?</h2>
        <Choice
          name="What kind"
          options={KIND_OPTIONS}
          value={place.kind}
          columns={2}
          onChange={(kind) => put({ kind })}
        />
        {MOMENTS[draft.kind].map(({ moment, title }, at) => (
          <div key={moment} style={{ marginTop: 16 }}>
            <div className="between">
              <h2>{title}</h2>
              <span className="quiet">
                {at === 0 && before
                  ? `${asSentence(dayAsSaid(before.date, today))}: ${before.value}`
                  : at > 0
                    ? 'may be left out'
                    : ''}
              </span>
            </div>
            <Tenths
              name={title}
              value={place.scores[moment] ?? null}
              words={PAIN_WORDS}
              onChange={(value) => put({ scores: withScore(place, moment, value) })}
            />
          </div>
        ))}
        <CautionBox cautions={cautionsSoFar(draft)} coach={coach} />
        <Choice
          name="The usual or new"
          options={USUAL_OPTIONS}
          value={place.usual}
          columns={2}
          onChange={(usual) => put({ usual })}
        />
        <hr className="rule" />
        <DangerSigns draft={draft} place={place} change={change} />
      </main>
      <div className="phone-foot">
        {missing ? <p className="why">{missing}</p> : null}
        <button
          type="button"
          className="act act-filled"
          disabled={missing !== null}
          onClick={() => (next ? change({ placeAt: draft.placeAt + 1 }) : send())}
        >
          {next ? `Next: ${groupInWords(next.group, next.side)}` : `Send to ${coach}`}
        </button>
      </div>
    </>
  );
}

/** The last words of a region are enough under its heading: "inner" for "elbow, inner". */
function exactly(region: (typeof PAIN_GROUPS)[number]['regions'][number]): string {
  const label = REGION_LABELS[region];
  return asSentence(label.includes(', ') ? label.slice(label.indexOf(', ') + 2) : label);
}

function missingIn(place: PlaceDraft): string | null {
  if (place.region === null) return 'Still to tell: where exactly.';
  if (place.kind === null) return 'Still to tell: what kind.';
  if (Object.keys(place.scores).length === 0) return 'Still to tell: how much, 0 to 10.';
  return null;
}

function withScore(place: PlaceDraft, moment: PainMoment, value: number | null): PlaceDraft['scores'] {
  const { [moment]: _, ...others } = place.scores;
  return value === null ? others : { ...others, [moment]: value };
}

/** As long as the kind is not told, a high score is taken for the serious kind. */
function cautionsSoFar(draft: Draft) {
  const pain = draft.places.flatMap(({ region, side, kind, scores, group }) =>
    Object.values(scores).map((value) => ({
      region: region ?? firstRegion(group),
      side,
      kind: kind ?? ('joint' as const),
      value,
    })),
  );
  return cautionsOf({ pain, dangerSigns: draft.signs });
}

function firstRegion(group: string) {
  return PAIN_GROUPS.find((one) => one.key === group)?.regions[0] ?? 'hand-fingers';
}
