'use client';
import { groupInWords, PAIN_GROUPS, type PainGroup } from '#lib/domain/pain-groups.ts';
import type { PainSide } from '#lib/domain/vocabulary.ts';
import type { Draft, PlaceDraft } from '../_phone/draft.ts';
import { Bob } from '../_phone/icons.tsx';
import type { Change } from './use-draft.ts';
import { WordsAndQuestion } from './words-and-question.tsx';

type Props = {
  draft: Draft;
  change: Change;
  send: (patch?: Partial<Draft>) => void;
  coach: string;
  /** Said on Today already: something hurts, so only where is asked. */
  hurts: boolean;
};

/** "Nothing hurts" first, else where: region words on the line, left and right beside them. */
export function StepPain({ draft, change, send, coach, hurts }: Props) {
  const isRest = draft.kind === 'rest';
  const [first] = draft.places;
  const nothing = () => {
    if (isRest) send({ nothingHurts: true, places: [], signs: [] });
    else change({ nothingHurts: !draft.nothingHurts, places: [], signs: [] });
  };
  const toggle = (group: PainGroup, side: PainSide) =>
    change({ nothingHurts: false, places: toggled(draft.places, group, side) });
  return (
    <>
      <main>
        {hurts ? (
          <h1 className="tight">Where does it hurt?</h1>
        ) : (
          <>
            <h1 className="tight">{isRest ? 'No training. Does anything hurt?' : 'Does anything hurt?'}</h1>
            <button
              type="button"
              className={`act ${draft.nothingHurts ? 'act-filled' : ''}`}
              aria-pressed={draft.nothingHurts}
              onClick={nothing}
            >
              {isRest ? `Nothing hurts: send to ${coach}` : 'Nothing hurts'}
            </button>
          </>
        )}
        <p className="quiet" style={{ marginTop: 12 }}>
          {hurts ? 'Tap where.' : 'Or tap where.'} Hands at the bottom, as in a handstand.
        </p>
        <div className="body-rows">
          {PAIN_GROUPS.map((group) => (
            <BodyRow
              key={group.key}
              group={group}
              places={draft.places}
              onPress={(side) => toggle(group, side)}
            />
          ))}
          <span />
          <div className="line-cell end" aria-hidden="true">
            <Bob size={28} />
          </div>
          <span />
        </div>
        {isRest ? <WordsAndQuestion draft={draft} change={change} coach={coach} /> : null}
      </main>
      <div className="phone-foot">
        {first ? (
          <button
            type="button"
            className="act act-filled"
            onClick={() => change({ step: 'score', placeAt: 0 })}
          >
            Next: {groupInWords(first.group, first.side)}, how much
          </button>
        ) : (
          <button
            type="button"
            className={`act ${draft.nothingHurts ? 'act-filled' : ''}`}
            disabled={hurts}
            onClick={() => send()}
          >
            {footWords(draft, coach, hurts)}
          </button>
        )}
      </div>
    </>
  );
}

function footWords(draft: Draft, coach: string, hurts: boolean): string {
  if (draft.nothingHurts) return `Send to ${coach}`;
  return hurts ? 'Tap where first' : 'Send without saying';
}

function toggled(places: PlaceDraft[], group: PainGroup, side: PainSide): PlaceDraft[] {
  const there = places.filter((place) => !(place.group === group.key && isSame(place.side, side, group)));
  if (there.length < places.length) return there;
  const [only] = group.regions.length === 1 ? group.regions : [];
  return [...places, { group: group.key, region: only ?? null, side, kind: null, scores: {}, usual: null }];
}

/** A place in the middle may have been given a side later: it is still the same cell. */
function isSame(side: PainSide, pressed: PainSide, group: PainGroup): boolean {
  return !group.paired || side === pressed;
}

type RowProps = { group: PainGroup; places: PlaceDraft[]; onPress: (side: PainSide) => void };

function BodyRow({ group, places, onPress }: RowProps) {
  const isTold = (side: PainSide) =>
    places.some((place) => place.group === group.key && isSame(place.side, side, group));
  if (!group.paired) {
    return (
      <button
        type="button"
        className="cell middle"
        aria-pressed={isTold('middle')}
        onClick={() => onPress('middle')}
      >
        {group.label}
      </button>
    );
  }
  return (
    <>
      <button
        type="button"
        className="cell"
        aria-pressed={isTold('left')}
        aria-label={`left ${group.label}`}
        onClick={() => onPress('left')}
      >
        left
      </button>
      <div className="where" aria-hidden="true">
        {group.label}
      </div>
      <button
        type="button"
        className="cell"
        aria-pressed={isTold('right')}
        aria-label={`right ${group.label}`}
        onClick={() => onPress('right')}
      >
        right
      </button>
    </>
  );
}
