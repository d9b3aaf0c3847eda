'use client';

import { SUPPORT_LABELS } from '#lib/domain/labels.ts';
import { PLAN_SESSIONS } from '#lib/domain/plan-sessions.ts';
import { SUPPORTS } from '#lib/domain/vocabulary.ts';
import { findRung } from '#lib/views/draft-lines.ts';
import type { FormLadder, FormRung } from '#lib/views/plan-form.ts';
import { Field } from '../../_parts/field.tsx';
import forms from '../../_parts/forms.module.css';
import styles from './plan.module.css';
import type { RowProps } from './row-props.ts';

type Props = RowProps & { ladder: FormLadder | undefined; rung: FormRung | undefined };
const FOLDED = ['support', 'stopRule', 'pairedWith', 'noKitRungId', 'session'] as const;

/** What few lines need, folded: its summary says what is set. */
export function DrillMore(props: Props) {
  const { row, rung, error, onChange, onPart } = props;
  const refused = FOLDED.some((name) => error(name));
  const id = (name: string) => `drill-${row.key}-${name}`;
  return (
    <details className={styles.more} open={refused || undefined}>
      <summary>{saidOf(props)}</summary>
      <div className={styles.moreFields}>
        <Field id={id('support')} label="Done on" error={error('support')}>
          {(control) => (
            <select
              {...control}
              value={row.support}
              onChange={(event) =>
                onChange({ support: SUPPORTS.find((one) => one === event.target.value) ?? '' })
              }
            >
              <option value="">whatever is there</option>
              {SUPPORTS.map((support) => (
                <option key={support} value={support}>
                  {SUPPORT_LABELS[support]}
                </option>
              ))}
            </select>
          )}
        </Field>
        <Field id={id('stopRule')} label="When to stop" error={error('stopRule')}>
          {(control) => (
            <input
              {...control}
              value={row.stopRule}
              placeholder="stop when the hips drop"
              onChange={(event) => onChange({ stopRule: event.target.value })}
            />
          )}
        </Field>
        <PyramidField {...props} />
        {rung && rung.kit.length > 0 ? <KitField {...props} /> : null}
        <Field id={id('session')} label="Session" error={error('session')}>
          {(control) => (
            <select
              {...control}
              value={row.session}
              onChange={(event) => onChange({ session: event.target.value })}
            >
              {PLAN_SESSIONS.map((name) => (
                <option key={name}>{name}</option>
              ))}
            </select>
          )}
        </Field>
        <label className={forms.tick}>
          <input
            type="checkbox"
            checked={row.notTwoDaysRunning}
            onChange={(event) => onChange({ notTwoDaysRunning: event.target.checked })}
          />
          Not two days running
        </label>
        {rung?.eachSide && row.side === 'both' ? (
          <button type="button" onClick={onPart}>
            Left and right on rungs of their own
          </button>
        ) : null}
      </div>
    </details>
  );
}

/** Two rungs of one ladder in one session, the easier filling up what the harder leaves. */
function PyramidField({ row, others, ladder, error, onChange }: Props) {
  const choices = others.filter(
    (other) => other.ladderId === row.ladderId && other.rungId && other.rungId !== row.rungId,
  );
  const name = (rungId: string) => ladder?.rungs.find((one) => one.id === rungId)?.name ?? '';
  return (
    <Field
      id={`drill-${row.key}-pairedWith`}
      label="Pyramid with"
      hint={choices.length === 0 ? 'Add another rung of this ladder to the session first.' : ''}
      error={error('pairedWith')}
    >
      {(control) => (
        <select
          {...control}
          value={row.pairedWith}
          onChange={(event) => onChange({ pairedWith: event.target.value })}
        >
          <option value="">no other rung</option>
          {[...new Set(choices.map((other) => other.rungId))].map((rungId) => (
            <option key={rungId} value={rungId}>
              {name(rungId)}
            </option>
          ))}
        </select>
      )}
    </Field>
  );
}

/** Stand-ins need a floor and a wall at most: rungs of the same part first, then of the same kind of work. */
function KitField({ row, rung, ladder, ladders, error, onChange }: Props) {
  const free = (one: FormLadder) => one.rungs.filter(({ kit }) => kit.length === 0);
  const groups = [
    ...ladders.filter((one) => one.part === ladder?.part && one.skill === ladder.skill),
    ...ladders.filter(
      (one) => one.family === ladder?.family && !(one.part === ladder.part && one.skill === ladder.skill),
    ),
  ].filter((one) => free(one).length > 0);
  return (
    <Field
      id={`drill-${row.key}-noKitRungId`}
      label="Without kit, instead"
      hint={`This one needs ${rung?.kit.join(' and ')}.`}
      error={error('noKitRungId')}
    >
      {(control) => (
        <select
          {...control}
          value={row.noKitRungId}
          onChange={(event) => onChange({ noKitRungId: event.target.value })}
        >
          <option value="">leave it out</option>
          {groups.map((one) => (
            <optgroup key={one.id} label={one.name}>
              {free(one).map((other) => (
                <option key={other.id} value={other.id}>
                  {other.name}
                </option>
              ))}
            </optgroup>
          ))}
        </select>
      )}
    </Field>
  );
}

/** "on rings, not two days running; stop when it pinches", or what could be set. */
function saidOf({ row, ladders }: Props): string {
  const name = (rungId: string) => findRung(ladders, rungId)?.rung.name ?? 'another rung';
  const parts = [
    row.support ? SUPPORT_LABELS[row.support] : '',
    row.notTwoDaysRunning ? 'not two days running' : '',
    row.stopRule.replace(/\.$/, ''),
    row.pairedWith ? `pyramid with ${name(row.pairedWith)}` : '',
    row.noKitRungId ? `without kit: ${name(row.noKitRungId)}` : '',
  ].filter(Boolean);
  return parts.length > 0 ? parts.join('; ') : 'Support, stop rule, pyramid, without kit';
}
