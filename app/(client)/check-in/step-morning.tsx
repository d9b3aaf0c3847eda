'use client';
import { cautionsOf } from '#lib/domain/caution.ts';
import { asSentence, PAIN_KIND_LABELS, placeInWords } from '#lib/domain/labels.ts';
import type { MorningPlace, MorningQuestion } from '#lib/views/phone-morning.ts';
import type { Draft, PlaceDraft } from '../_phone/draft.ts';
import { withMorning } from '../_phone/morning.ts';
import { useUnder18 } from '../_phone/under18.ts';
import { CautionBox } from './caution-box.tsx';
import { Tenths } from './tenths.tsx';
import type { Change } from './use-draft.ts';

type Props = {
  draft: Draft;
  morning: MorningQuestion;
  change: Change;
  send: (patch?: Partial<Draft>) => void;
  coach: string;
  onElsewhere: () => void;
};

const PAIN_WORDS = { 0: 'none', 10: 'worst' };

/** The morning after: each place of yesterday once, nothing chosen; more is asked only where something is told. */
export function StepMorning({ draft, morning, change, send, coach, onElsewhere }: Props) {
  const hurting = draft.places.findIndex((place) => (place.scores.morning ?? 0) > 0);
  const isTold = draft.places.some((place) => place.scores.morning !== undefined);
  return (
    <>
      <main>
        <h1 className="tight">How is it this morning?</h1>
        <p className="quiet">
          {morning.why === 'pain'
            ? 'On getting up, where it hurt yesterday.'
            : 'Yesterday was far more than usual.'}
        </p>
        <button
          type="button"
          className="act"
          onClick={() => send({ nothingHurts: true, places: [], signs: [] })}
        >
          Nothing hurts: send to {coach}
        </button>
        {morning.places.map((place) => (
          <PlaceThisMorning
            key={`${place.region} ${place.side}`}
            place={place}
            told={placeIn(draft, place)}
            coach={coach}
            onScore={(value) =>
              change({ nothingHurts: false, places: withMorning(draft.places, place, value) })
            }
          />
        ))}
        <button type="button" className="word-act" onClick={onElsewhere}>
          {morning.places.length > 0 ? 'Somewhere else hurts' : 'Something hurts'}
        </button>
      </main>
      <div className="phone-foot">
        {isTold ? null : <p className="why">Tap how much it is, or that nothing hurts.</p>}
        <button
          type="button"
          className="act act-filled"
          disabled={!isTold}
          onClick={() => (hurting === -1 ? send() : change({ step: 'score', placeAt: hurting }))}
        >
          {hurting === -1 ? `Send to ${coach}` : 'Next: more about it'}
        </button>
      </div>
    </>
  );
}

function placeIn({ places }: Draft, { region, side }: MorningPlace): PlaceDraft | undefined {
  return places.find((place) => place.region === region && place.side === side);
}

type PlaceProps = {
  place: MorningPlace;
  told: PlaceDraft | undefined;
  coach: string;
  onScore: (value: number | null) => void;
};

function PlaceThisMorning({ place, told, coach, onScore }: PlaceProps) {
  const { region, side, kind, value: yesterday } = place;
  const under18 = useUnder18();
  const title = asSentence(placeInWords(region, side));
  const value = told?.scores.morning ?? null;
  return (
    <div className="pain-moment">
      <div className="between">
        <h2>{title}</h2>
        <span className="quiet">
          {PAIN_KIND_LABELS[kind]}, yesterday {yesterday}
        </span>
      </div>
      <Tenths name={`${title}, this morning`} value={value} words={PAIN_WORDS} onChange={onScore} />
      {value === null ? null : (
        <CautionBox
          cautions={cautionsOf({ pain: [{ region, side, kind, value }], dangerSigns: [] }, under18)}
          coach={coach}
        />
      )}
    </div>
  );
}
