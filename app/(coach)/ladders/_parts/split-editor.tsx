'use client';

import { useRouter } from 'next/navigation';
import { type FormEvent, useState } from 'react';
import { type SplitPage, weeksAfterSplit } from '#lib/views/ladders/split-page.ts';
import { evenTargets, readShape, shownSteps } from '#lib/views/ladders/split-steps.ts';
import forms from '../../clients/_parts/forms.module.css';
import { ChoiceField } from './choice-field.tsx';
import { ShapeFields } from './shape-fields.tsx';
import { shapeTexts } from './shape-texts.ts';
import styles from './split.module.css';
import { SplitSteps, type StepRow } from './split-steps.tsx';
import { useLadderEdit } from './use-ladder-edit.tsx';

type Props = { ladder: { ladderId: string; base: string }; page: SplitPage };
type Typed = { name?: string; target?: string };
const COUNTS = ['2', '3', '4', '5', '6', '7', '8'] as const;

/** Proposes smaller steps: even in load by the angle of the hip, or even in the pass target. */
export function SplitEditor({ ladder, page }: Props) {
  const router = useRouter();
  const [by, setBy] = useState<'angle' | 'target'>(page.shapes ? 'angle' : 'target');
  const [count, setCount] = useState<(typeof COUNTS)[number]>('2');
  const [from, setFrom] = useState(shapeTexts(page.shapes?.from));
  const [to, setTo] = useState(shapeTexts(page.shapes?.to));
  const [typed, setTyped] = useState<Record<number, Typed>>({});
  const { send, busy, error, told } = useLadderEdit(ladder, () => router.push(`/ladders/${ladder.ladderId}`));

  const shapes = { from: readShape(from), to: readShape(to) };
  const shown =
    by === 'angle' && shapes.from && shapes.to
      ? shownSteps({ from: shapes.from, to: shapes.to, count: Number(count), name: page.name })
      : undefined;
  const proposed = by === 'angle' ? byAngle(page, shown) : byTarget(page, Number(count));
  const rows = proposed.map((row, index) => ({ ...row, ...typed[index] }));
  const problem = problemOf(by, shown);

  function submit(event: FormEvent) {
    event.preventDefault();
    const steps = rows.slice(0, -1).map((row) => ({
      name: row.name,
      pass: { sets: page.sets, target: row.target, days: page.days, tries: page.tries },
      weight: row.weight,
    }));
    send({
      act: 'split',
      rungId: page.rungId,
      tissue: by === 'angle' ? (page.shapes?.tissue ?? null) : null,
      steps,
    });
  }

  return (
    <form className={forms.wide} onSubmit={submit} noValidate>
      {told}
      <div className={styles.choices}>
        {page.shapes ? (
          <ChoiceField
            id="split-by"
            label="Steps by"
            value={by}
            options={[
              { value: 'angle', label: 'angle, even in load on the shoulder' },
              { value: 'target', label: 'pass target, same shape' },
            ]}
            onChange={setBy}
          />
        ) : null}
        <ChoiceField
          id="split-count"
          label="How many, this rung included"
          value={count}
          options={COUNTS.map((value) => ({ value, label: value }))}
          onChange={setCount}
        />
      </div>
      {by === 'angle' ? (
        <>
          <ShapeFields
            id="from"
            legend={
              page.below ? `From: the rung below, “${page.below.name}”` : 'From: what the client holds now'
            }
            shape={from}
            onChange={setFrom}
          />
          <ShapeFields id="to" legend={`To: this rung, “${page.name}”`} shape={to} onChange={setTo} />
        </>
      ) : null}
      {problem ? (
        <p role="status" className={forms.refusal}>
          {problem}
        </p>
      ) : (
        <SplitSteps
          rows={rows}
          start={shown && 'start' in shown ? shown.start : null}
          measure={page.measure}
          error={(index, name) => error(`steps.${index}.${name}`)}
          onType={(index, patch) => setTyped((all) => ({ ...all, [index]: { ...all[index], ...patch } }))}
        />
      )}
      <p className={forms.hint}>
        {weeksAfterSplit(page.usualWeeks, Number(count))}
        {shown && 'steps' in shown ? ` ${shown.besides} ${shown.doubt}` : ''}
      </p>
      {by === 'angle' ? (
        <p className={forms.hint}>
          Shoulder moment: gravity about both shoulders, in body weight × height; own statics with a level
          trunk and straight arms, masses of Winter 2009, lengths of Drillis &amp; Contini 1966. A rounded
          back is not in it.
        </p>
      ) : null}
      <div className={forms.acts}>
        <button type="submit" className={forms.main} disabled={busy || problem !== ''}>
          Split the rung
        </button>
        <a className={forms.other} href={`/ladders/${ladder.ladderId}`}>
          Leave without saving
        </a>
      </div>
    </form>
  );
}

function problemOf(by: 'angle' | 'target', shown: ReturnType<typeof shownSteps> | undefined): string {
  if (by === 'target') return '';
  if (!shown) return 'Write each angle as a number of degrees from -90 to 180.';
  return 'problem' in shown ? shown.problem : '';
}

function byAngle(page: SplitPage, shown: ReturnType<typeof shownSteps> | undefined): StepRow[] {
  if (!shown || 'problem' in shown) return [];
  return shown.steps.map((step) => ({ ...step, target: page.target }));
}

function byTarget(page: SplitPage, count: number): StepRow[] {
  const start = Number(page.below?.target ?? 0);
  const to = Number(page.target);
  const from = start < to ? start : 0;
  return evenTargets(from, to, count, page.measure).map((target) => ({
    name: page.name,
    target: String(target),
    weight: null,
  }));
}
