'use client';

import { type KeyboardEvent, useRef } from 'react';
import { SIDES, type Side } from '#lib/domain/vocabulary.ts';
import { Field } from '../../_parts/field.tsx';
import forms from '../../_parts/forms.module.css';
import { Grip } from '../../_parts/grip.tsx';
import { placeByKey } from '../../_parts/use-drag.ts';
import { DrillMore } from './drill-more.tsx';
import { LadderField, RungField } from './ladder-fields.tsx';
import styles from './plan.module.css';
import type { RowProps } from './row-props.ts';

/** One line of a plan: which rung, which side, how much, how often; all else folded below it. */
export function DrillRow(props: RowProps) {
  const { row, place, at, of, ladders, error, onChange, onRemove, onMove } = props;
  const box = useRef<HTMLDivElement>(null);
  const ladder = ladders.find((one) => one.id === row.ladderId);
  const rung = ladder?.rungs.find((one) => one.id === row.rungId);
  const id = (name: string) => `drill-${row.key}-${name}`;

  function choose(rungId: string) {
    const chosen = ladder?.rungs.find((one) => one.id === rungId);
    if (!chosen) return onChange({ rungId });
    const side: Side = chosen.eachSide ? row.side : 'both';
    onChange({ rungId, side, sets: String(chosen.passSets), target: String(chosen.passTarget) });
  }

  function move(to: number) {
    const focused = document.activeElement;
    onMove(to);
    // A row that is moved in the page loses its focus.
    requestAnimationFrame(
      () => focused instanceof HTMLElement && box.current?.contains(focused) && focused.focus(),
    );
  }

  function onKeyDown(event: KeyboardEvent) {
    if (!event.altKey || (event.key !== 'ArrowUp' && event.key !== 'ArrowDown')) return;
    event.preventDefault();
    move(event.key === 'ArrowUp' ? at - 1 : at + 1);
  }

  function onGripKey(event: KeyboardEvent) {
    const to = event.altKey ? undefined : placeByKey(event.key, at, of);
    if (to === undefined) return;
    event.preventDefault();
    move(to);
  }

  const amount = (name: 'sets' | 'target' | 'minutes' | 'timesPerWeek', label: string) => (
    <Field id={id(name)} label={label} error={error(name)}>
      {(control) => (
        <input
          {...control}
          inputMode="decimal"
          autoComplete="off"
          value={row[name]}
          onChange={(event) => onChange({ [name]: event.target.value })}
        />
      )}
    </Field>
  );

  return (
    // biome-ignore lint/a11y/useSemanticElements: a fieldset cannot be laid out as a grid row in every browser
    <div
      ref={box}
      role="group"
      aria-label={`Drill ${place}${rung ? `: ${rung.name}` : ''}`}
      className={styles.drill}
      data-held={props.isHeld || undefined}
      onKeyDown={onKeyDown}
    >
      <div className={styles.drillHead}>
        <div className={styles.place}>
          <Grip
            label={`Drag ${place}, ${at + 1} of ${of}; or arrow keys`}
            onKeyDown={onGripKey}
            onPointerDown={props.onHold}
          />
          {place}
        </div>
        <div className={styles.acts}>
          <button type="button" onClick={() => move(at - 1)} aria-label={`Up: move ${place} up`}>
            Up
          </button>
          <button type="button" onClick={() => move(at + 1)} aria-label={`Down: move ${place} down`}>
            Down
          </button>
          <button type="button" onClick={onRemove} aria-label={`Remove ${place}`}>
            Remove
          </button>
        </div>
      </div>
      <div className={styles.what}>
        <LadderField
          id={id('ladder')}
          ladders={ladders}
          value={row.ladderId}
          hint={
            row.rungId && !ladder
              ? 'This drill is no longer in the ladders. Choose another, or leave it.'
              : ''
          }
          onChange={(ladderId) => onChange({ ladderId, rungId: '', pairedWith: '', noKitRungId: '' })}
        />
        <RungField
          id={id('rungId')}
          ladder={ladder}
          value={row.rungId}
          error={error('rungId')}
          onChange={choose}
        />
      </div>
      <div className={styles.dose}>
        <Field id={id('side')} label="Side" error={error('side')}>
          {(control) => (
            <select
              {...control}
              value={row.side}
              onChange={(event) =>
                onChange({ side: SIDES.find((side) => side === event.target.value) ?? 'both' })
              }
            >
              {SIDES.map((side) => (
                <option
                  key={side}
                  value={side}
                  disabled={side !== 'both' && rung !== undefined && !rung.eachSide}
                >
                  {side}
                </option>
              ))}
            </select>
          )}
        </Field>
        {amount('sets', 'Sets')}
        {amount('target', rung ? `Target, ${rung.unit}` : 'Target')}
        {amount('minutes', 'Or minutes')}
        {amount('timesPerWeek', 'Times a week')}
      </div>
      <DoseLine {...props} />
      <DrillMore {...props} ladder={ladder} rung={rung} />
      {rung ? null : (
        <p className={forms.hint}>Choose a ladder and a rung; the dose is filled in from its pass mark.</p>
      )}
    </div>
  );
}

/** What the last results propose, put in with one press. */
function DoseLine({ row, place, doseOf, onChange }: RowProps) {
  const proposed = row.rungId ? doseOf(row.rungId, row.side, row.pairedWith) : undefined;
  if (!proposed || row.minutes) return null;
  if ('sore' in proposed) {
    return (
      <div className={styles.proposed}>
        <p className={forms.hint}>No dose proposed: {proposed.sore}.</p>
      </div>
    );
  }
  const { sets, target, dose, why, estimate } = proposed;
  const isThere = row.sets === sets && row.target === target;
  return (
    <div className={styles.proposed}>
      <p className={forms.hint}>
        Proposed: {dose} ({why}).
      </p>
      {isThere ? null : (
        <button
          type="button"
          onClick={() => onChange({ sets, target })}
          aria-label={`Put it in: ${dose} into ${place}`}
        >
          Put it in
        </button>
      )}
      {estimate ? <p className={forms.hint}>{estimate}</p> : null}
    </div>
  );
}
