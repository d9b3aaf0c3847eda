'use client';

import { useRouter } from 'next/navigation';
import { type FormEvent, useDeferredValue, useMemo, useState } from 'react';
import type { Limits } from '#lib/checks/thresholds.ts';
import type { ClientHistory, HistoryRung } from '#lib/domain/history.ts';
import { addDays } from '#lib/domain/local-date.ts';
import { MINUTES_DOUBT } from '#lib/planning/session-minutes.ts';
import type { DraftView } from '#lib/views/draft-lines.ts';
import { type Packed, unpack } from '#lib/views/packed.ts';
import { editedPlan, planBody, sessionsLeft } from '#lib/views/plan-body.ts';
import type { PlanFormModel } from '#lib/views/plan-form.ts';
import { planLive } from '#lib/views/plan-live.ts';
import { proposedDoses } from '#lib/views/proposed-dose.ts';
import forms from '../../_parts/forms.module.css';
import { postJson, textIn } from '../../_parts/post-json.ts';
import { DraftPanel } from './draft-panel.tsx';
import { Goals } from './goals.tsx';
import { KeepTemplate } from './keep-template.tsx';
import { LivePanel } from './live-panel.tsx';
import styles from './plan.module.css';
import { PlanFrame } from './plan-frame.tsx';
import { PlanWords } from './plan-words.tsx';
import { type Refused, RefusedBox } from './refused-box.tsx';
import { SessionBlock } from './session-block.tsx';
import { usePlan } from './use-plan.ts';
import { WeekKinds } from './week-kinds.tsx';

type Sent = {
  model: PlanFormModel;
  /** What loads are foreseen from. `yesterday`: the last day that is over. */
  past: {
    history: ClientHistory;
    rungs: HistoryRung[];
    yesterday: string;
    changed: Partial<Limits>;
    danger?: string | undefined;
  };
};
/** `prepares`: it waits for approval. `approvalId`: of the prepared plan that is opened here. `keeps`: may keep plans for reuse. */
export type PlanWay = { prepares: boolean; approvalId: string | null; keeps: boolean };
type Props = Sent & { draft: DraftView | null; way: PlanWay };

type Packets = { packed: Packed<Sent>; draft: DraftView | null; way: PlanWay };

export function PlanForm({ packed, draft, way }: Packets) {
  const sent = useMemo(() => unpack(packed), [packed]);
  return <Form {...sent} draft={draft} way={way} />;
}

function Form({ model, draft, past, way }: Props) {
  const router = useRouter();
  const plan = usePlan(model, draft ? { why: draft.why, ...(draft.notes && { notes: draft.notes }) } : {});
  const { typed } = plan;
  const [refused, setRefused] = useState<Refused | null>(null);
  const [busy, setBusy] = useState(false);
  const error = (path: string) => refused?.fields[path];
  const live = useLive(plan, model, past);
  const doseOf = useMemo(() => proposedDoses({ ...past, today: addDays(past.yesterday, 1) }), [past]);

  async function send(event: FormEvent<HTMLFormElement>) {
    event.preventDefault();
    setBusy(true);
    const about = { baseVersion: model.baseVersion, draftId: draft?.id ?? null };
    const body = planBody(typed, about);
    const answer = way.approvalId
      ? await postJson(`/api/team/approvals/${way.approvalId}`, { decision: 'approve', body })
      : await postJson(`/api/clients/${model.clientId}/plans`, body);
    setBusy(false);
    if (answer.ok && textIn(answer.value, 'state') === 'overtaken') {
      setRefused({ message: textIn(answer.value, 'line'), fields: {} });
      return;
    }
    if (answer.ok) {
      const waits = textIn(answer.value, 'approvalId') !== '';
      const version = textIn(answer.value, 'version') || model.baseVersion + 1;
      router.push(`/clients/${model.clientId}${waits ? '' : `?saved=${version}`}`);
      router.refresh();
      return;
    }
    setRefused(answer);
  }

  return (
    <form className={styles.form} onSubmit={send} noValidate>
      <div className={styles.main}>
        <RefusedBox refused={refused} typed={typed} />
        {draft ? <DraftPanel draft={draft} plan={plan} ladders={model.ladders} /> : null}
        <PlanFrame plan={plan} error={error} />
        <section aria-labelledby="drills">
          <h2 id="drills">Drills</h2>
          <p className={styles.quiet}>
            Drag a drill by its grip, or press Alt with the arrow up or down in any of its fields. Minutes:{' '}
            {MINUTES_DOUBT}.
          </p>
          {error('items') ? <p className={forms.error}>{error('items')}</p> : null}
          {typed.sessions.map((session, index) => (
            <SessionBlock
              key={session.label}
              session={session}
              isFirst={index === 0}
              plan={plan}
              ladders={model.ladders}
              doseOf={doseOf}
              minutes={minutesOf(live, session.label)}
              error={error}
            />
          ))}
          <div className={styles.acts}>
            {sessionsLeft(typed.sessions).map((label) => (
              <button key={label} type="button" onClick={() => plan.addSession(label)}>
                Add {label === 'short' ? 'a short session' : `session ${label}`}
              </button>
            ))}
          </div>
        </section>
      </div>
      <LivePanel
        live={live}
        acceptedWeekAu={typed.acceptedWeekAu}
        onAccept={(acceptedWeekAu) => plan.set({ acceptedWeekAu })}
      />
      <div className={styles.main}>
        <Goals plan={plan} skills={model.skills} error={error} />
        <WeekKinds
          plan={plan}
          error={error('easyWeeks.0') ?? error('testWeeks.0') ?? error('noKitWeeks.0')}
        />
        <PlanWords plan={plan} error={error} />
        <div className={forms.acts}>
          <button type="submit" className={forms.main} disabled={busy}>
            {sendWords(way)} version {model.baseVersion + 1}
          </button>
          <a className={forms.other} href={`/clients/${model.clientId}`}>
            Leave without saving
          </a>
        </div>
        {way.keeps && <KeepTemplate plan={plan} />}
      </div>
    </form>
  );
}

function sendWords({ prepares, approvalId }: PlanWay): string {
  if (approvalId) return 'Approve as';
  return prepares ? 'Prepare for approval as' : 'Save as';
}

/** What the plan comes to; typing goes first, the drawing follows. */
function useLive(plan: ReturnType<typeof usePlan>, model: PlanFormModel, past: Props['past']) {
  const typed = useDeferredValue(plan.typed);
  const names = useMemo(
    () => ({
      skills: new Map(model.skills.map(({ id, name }) => [id, name])),
      needsKit: new Set(
        model.ladders.flatMap(({ rungs }) => rungs.filter(({ kit }) => kit.length > 0).map(({ id }) => id)),
      ),
    }),
    [model],
  );
  return useMemo(() => {
    const edited = editedPlan(typed, names);
    return edited && planLive({ ...past, plan: edited });
  }, [typed, names, past]);
}

function minutesOf(live: ReturnType<typeof useLive>, label: string): string {
  const found = live?.minutes.find((one) => one.label === label);
  return found ? `about ${found.minutes} min` : '';
}
