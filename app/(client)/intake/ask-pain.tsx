'use client';
import { useState } from 'react';
import { cautionsOf } from '#lib/domain/caution.ts';
import type { DraftPlace } from '#lib/domain/intake/draft.ts';
import { asSentence, placeInWords, REGION_LABELS } from '#lib/domain/labels.ts';
import { groupInWords, PAIN_GROUPS, type PainGroup } from '#lib/domain/pain-groups.ts';
import type { PainRegion, PainSide } from '#lib/domain/vocabulary.ts';
import { CautionBox } from '../check-in/caution-box.tsx';
import { Tenths } from '../check-in/tenths.tsx';
import type { AskProps } from './ask-props.ts';
import { FieldError, TextField } from './fields.tsx';
import { WhereItHurts } from './where-it-hurts.tsx';

const PAIN_WORDS = { 0: 'none', 10: 'worst' };
type Asked = { group: PainGroup; side: PainSide };

type Props = AskProps<'pain'> & { under18: boolean };

export function AskPain({ page, change, error, coach, under18 }: Props) {
  const [asked, setAsked] = useState<Asked | null>(null);
  const set = (places: DraftPlace[]) => change('pain', { places, nothing: false });
  const add = (region: PainRegion, side: PainSide) => {
    setAsked(null);
    if (page.places.some((one) => one.region === region && one.side === side)) return;
    set([...page.places, { region, side, value: null, sinceWeeks: '' }]);
  };
  const press = (group: PainGroup, side: PainSide) => {
    const [only] = group.regions;
    if (group.regions.length === 1 && only) add(only, side);
    else setAsked({ group, side });
  };
  const told = {
    dangerSigns: [],
    pain: page.places.map(({ region, side, value }) => ({
      region,
      side,
      value: value ?? 0,
      kind: 'joint' as const,
    })),
  };
  const cautions = cautionsOf(told, under18);
  return (
    <>
      <h1 className="tight">What hurts now?</h1>
      <p className="quiet">Joints and tendons. Sore muscles after training do not count.</p>
      <button
        type="button"
        className={`act intake-none ${page.nothing ? 'act-filled' : ''}`}
        aria-pressed={page.nothing}
        onClick={() => change('pain', { nothing: !page.nothing, places: [] })}
      >
        Nothing hurts
      </button>
      <FieldError id="pain-error" error={error('pain')} />
      {page.places.map((place) => (
        <OnePlace
          key={`${place.region} ${place.side}`}
          place={place}
          error={error}
          onChange={(patch) => set(page.places.map((one) => (one === place ? { ...one, ...patch } : one)))}
          onRemove={() => set(page.places.filter((one) => one !== place))}
        />
      ))}
      {asked ? (
        <fieldset
          className="cells cells-2"
          aria-label={`Where at the ${groupInWords(asked.group.key, asked.side)}`}
        >
          {asked.group.regions.map((region) => (
            <button key={region} type="button" className="cell" onClick={() => add(region, asked.side)}>
              {asSentence(REGION_LABELS[region])}
            </button>
          ))}
        </fieldset>
      ) : null}
      <WhereItHurts groups={PAIN_GROUPS} places={page.places} onPress={press} />
      <CautionBox cautions={cautions} coach={coach} />
    </>
  );
}

type OneProps = {
  place: DraftPlace;
  error: (field: string) => string | undefined;
  onChange: (patch: Partial<DraftPlace>) => void;
  onRemove: () => void;
};

function OnePlace({ place, error, onChange, onRemove }: OneProps) {
  const name = asSentence(placeInWords(place.region, place.side));
  const field = `pain.${place.region}.${place.side}`;
  return (
    <section className="intake-place" aria-label={name}>
      <div className="between">
        <h2>{name}</h2>
        <button type="button" className="word-act" onClick={onRemove} aria-label={`Take back: ${name}`}>
          Take back
        </button>
      </div>
      <Tenths
        name={`${name}, how much`}
        value={place.value}
        words={PAIN_WORDS}
        onChange={(value) => onChange({ value })}
      />
      <FieldError id={`${field}.value-error`} error={error(`${field}.value`)} />
      <TextField
        id={`${field}.weeks`}
        kind="number"
        label="For how many weeks?"
        hint="0: since a few days"
        value={place.sinceWeeks}
        error={error(`${field}.sinceWeeks`)}
        onChange={(sinceWeeks) => onChange({ sinceWeeks })}
      />
    </section>
  );
}
