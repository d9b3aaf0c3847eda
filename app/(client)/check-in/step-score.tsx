'use client';
import { cautionsOf } from '#lib/domain/caution.ts';
import { asSentence, PAIN_KIND_LABELS, REGION_LABELS } from '#lib/domain/labels.ts';
import { groupInWords, PAIN_GROUPS } from '#lib/domain/pain-groups.ts';
import { PAIN_KINDS, type PainRegion } from '#lib/domain/vocabulary.ts';
import type { Draft, PlaceDraft } from '../_phone/draft.ts';
import { CautionBox } from './caution-box.tsx';
import { Choice } from './choice.tsx';
import { DangerSigns } from './danger-signs.tsx';
import { PainMoments } from './pain-moments.tsx';
import type { Change, ScreenProps } from './use-draft.ts';

type Props = {
  draft: Draft;
  change: Change;
  send: () => void;
  coach: string;
  lastPain: ScreenProps['lastPain'];
  today: string;
};

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

/** One place: where exactly, what kind, how much and when, the usual or new; danger signs. */
export function StepScore({ draft, change, send, coach, lastPain, today }: Props) {
  const place = draft.places[draft.placeAt];
  if (!place) return null;
  const put = (patch: Partial<PlaceDraft>) =>
    change({ places: draft.places.map((one, at) => (at === draft.placeAt ? { ...one, ...patch } : one)) });
  const next = draft.places[draft.placeAt + 1];
  const missing = missingIn(place);
  return (
    <>
      <main>
        <h1 className="tight">{asSentence(groupInWords(place.group, place.side))}</h1>
        <WhereExactly place={place} put={put} />
        <h2 className="asked">What kind?</h2>
        <Choice
          name="What kind"
          options={KIND_OPTIONS}
          value={place.kind}
          columns={2}
          onChange={(kind) => put({ kind })}
        />
        <PainMoments
          key={draft.placeAt}
          kind={draft.kind}
          place={place}
          coach={coach}
          before={lastPain.find((told) => told.region === place.region && told.side === place.side)}
          today={today}
          onScores={(scores) => put({ scores })}
        />
        <h2 className="asked">The usual, or new?</h2>
        <Choice
          name="The usual or new"
          options={USUAL_OPTIONS}
          value={place.usual}
          columns={2}
          onChange={(usual) => put({ usual })}
        />
        <hr className="rule" />
        <DangerSigns draft={draft} place={place} change={change} />
        <CautionBox cautions={cautionsOf({ pain: [], dangerSigns: draft.signs })} coach={coach} />
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

function WhereExactly({ place, put }: { place: PlaceDraft; put: (patch: Partial<PlaceDraft>) => void }) {
  const group = PAIN_GROUPS.find((one) => one.key === place.group);
  const regions = group?.regions ?? [];
  return (
    <>
      {group?.paired === false ? (
        <Choice
          name="Side"
          options={SIDE_OPTIONS}
          value={place.side}
          columns={3}
          onChange={(side) => put({ side: side ?? 'middle' })}
        />
      ) : null}
      {regions.length > 1 ? (
        <Choice
          name="Where exactly"
          options={regions.map((value) => ({ value, label: exactly(value) }))}
          value={place.region}
          columns={2}
          onChange={(region) => put({ region })}
        />
      ) : null}
    </>
  );
}

/** The last words of a region are enough under its heading: "inner" for "elbow, inner". */
function exactly(region: PainRegion): string {
  const label = REGION_LABELS[region];
  return asSentence(label.includes(', ') ? label.slice(label.indexOf(', ') + 2) : label);
}

function missingIn(place: PlaceDraft): string | null {
  if (place.region === null) return 'Still to tell: where exactly.';
  if (place.kind === null) return 'Still to tell: what kind.';
  if (Object.keys(place.scores).length === 0) return 'Still to tell: how much, 0 to 10.';
  return null;
}
