'use client';
import { GAP_KIT } from '#lib/domain/gap-kit.ts';
import { asSentence, GROUND_LABELS } from '#lib/domain/labels.ts';
import { GROUNDS } from '#lib/domain/vocabulary.ts';
import { Choice } from '../check-in/choice.tsx';
import type { AskProps } from './ask-props.ts';
import { FieldError, Question, Several } from './fields.tsx';

const KIT_WORDS: Record<(typeof GAP_KIT)[number], string> = {
  'parallel-bars': 'Low parallel bars',
  bar: 'Pull-up bar',
  rings: 'Rings',
  box: 'Box or chair',
  block: 'Block or books',
  wedge: 'Wedge for the hands',
  stick: 'Stick',
  scale: 'Bathroom scale',
};
const KIT = GAP_KIT.map((value) => ({ value: value as string, label: KIT_WORDS[value] }));
const GROUND_OPTIONS = GROUNDS.map((value) => ({ value, label: asSentence(GROUND_LABELS[value]) }));

export function AskKit({ page, change, error }: AskProps<'kit'>) {
  return (
    <>
      <h1 className="tight">Where you train</h1>
      <Question
        title="What is there?"
        hint="A floor and a wall are taken as there. Nothing else: leave it open."
      >
        <Several name="Kit" options={KIT} values={page.kit} onChange={(kit) => change('kit', { kit })} />
      </Question>
      <Question
        title="What ground, most of the time?"
        hint="Soft ground bends the wrist further and makes balance harder."
      >
        <Choice
          name="Ground"
          options={GROUND_OPTIONS}
          value={page.ground}
          columns={3}
          onChange={(ground) => change('kit', { ground })}
        />
        <FieldError id="ground-error" error={error('ground')} />
      </Question>
    </>
  );
}
