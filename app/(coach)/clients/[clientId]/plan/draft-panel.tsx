'use client';

import { useEffect, useRef, useState } from 'react';
import { type DraftLineView, type DraftView, takeLine } from '#lib/views/draft-lines.ts';
import type { FormLadder } from '#lib/views/plan-form.ts';
import { weeksOf } from '#lib/views/plan-weeks.ts';
import styles from './plan.module.css';
import type { Plan } from './use-plan.ts';

type Props = { draft: DraftView; plan: Plan; ladders: FormLadder[] };
type Said = 'waits' | 'taken' | 'dropped';

/** Proposed lines, each to be taken, taken and changed, or dropped; nothing is in the plan before that. */
export function DraftPanel({ draft, plan, ladders }: Props) {
  const [said, setSaid] = useState<Record<string, Said>>({});
  const say = (key: string, what: Said) => setSaid((all) => ({ ...all, [key]: what }));

  function take(view: DraftLineView, then: 'stay' | 'change') {
    const { rows, key } = takeLine(plan.typed.rows, view.line, ladders);
    const { sessions } = plan.typed;
    plan.set({ rows });
    if (!sessions.some(({ label }) => label === view.line.session)) plan.addSession(view.line.session);
    say(view.key, 'taken');
    if (then === 'change' && key !== undefined) {
      requestAnimationFrame(() => document.getElementById(`drill-${key}-sets`)?.focus());
    }
  }

  function takeWeeks() {
    const weeks = weeksOf(plan.typed.from, plan.typed.until);
    const dates = draft.easyWeeks.flatMap((week) => weeks[week - 1]?.date ?? []);
    plan.set({ easyWeeks: [...new Set([...plan.typed.easyWeeks, ...dates])] });
    say('weeks', 'taken');
  }

  const line = (key: string, words: string, why: string, acts: [string, () => void][]) => (
    <li key={key} className={styles.draftLine}>
      <div>
        <strong>{words}</strong>
        {why ? <span className={styles.quiet}> {why}</span> : null}
      </div>
      <div className={styles.acts}>
        {(said[key] ?? 'waits') === 'waits' ? (
          acts.map(([name, act]) => (
            <button key={name} type="button" onClick={act} aria-label={`${name}: ${words}`}>
              {name}
            </button>
          ))
        ) : (
          <Told words={said[key] === 'taken' ? 'Taken into the plan below.' : 'Dropped.'} />
        )}
        {said[key] === 'dropped' ? (
          <button type="button" onClick={() => say(key, 'waits')} aria-label={`Bring back: ${words}`}>
            Bring back
          </button>
        ) : null}
      </div>
    </li>
  );
  const drop = (key: string): [string, () => void] => ['Drop it', () => say(key, 'dropped')];

  return (
    <section aria-labelledby="draft" className={styles.draft}>
      <h2 id="draft">{draft.title}</h2>
      {draft.used ? <p>{draft.used}</p> : null}
      {draft.why ? <p>{draft.why}</p> : null}
      <ul className={styles.draftLines}>
        {draft.lines.map((view) =>
          line(view.key, view.said, view.why, [
            ['Take it', () => take(view, 'stay')],
            ...(view.line.act === 'put'
              ? [['Take and change', () => take(view, 'change')] as [string, () => void]]
              : []),
            drop(view.key),
          ]),
        )}
        {draft.dropSkills.map(({ id, name }) =>
          line(`skill ${id}`, `Take ${name} out of focus`, '', [
            [
              'Take it',
              () => {
                plan.set({ goals: plan.typed.goals.filter((goal) => goal.skillId !== id) });
                say(`skill ${id}`, 'taken');
              },
            ],
            drop(`skill ${id}`),
          ]),
        )}
        {draft.easyWeeks.length > 0
          ? line('weeks', `Easy weeks: ${draft.easyWeeks.map((week) => `week ${week}`).join(', ')}`, '', [
              ['Take it', takeWeeks],
              drop('weeks'),
            ])
          : null}
      </ul>
      {draft.later ? (
        <p>Not in these lines: {draft.later}. Taken on the board instead, the step does all of it at once.</p>
      ) : null}
      <p className={styles.quiet}>What still waits here when the plan is saved is left out.</p>
    </section>
  );
}

/** What was done, in focus: the button that was pressed for it is gone. */
function Told({ words }: { words: string }) {
  const box = useRef<HTMLSpanElement>(null);
  useEffect(() => box.current?.focus(), []);
  return (
    <span role="status" ref={box} tabIndex={-1}>
      {words}
    </span>
  );
}
