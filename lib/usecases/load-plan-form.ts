import type { Actor } from '#lib/auth/actor.ts';
import { may } from '#lib/auth/permissions.ts';
import type { Limits } from '#lib/checks/thresholds.ts';
import { buildView } from '#lib/checks/view.ts';
import { findApproval } from '#lib/db/approvals.ts';
import { type TeamPg, withTeamPg } from '#lib/db/client.ts';
import { findClient } from '#lib/db/clients.ts';
import { type GoalRow, listOpenGoals, listSkills, type SkillRow } from '#lib/db/goals.ts';
import { loadHistories } from '#lib/db/histories.ts';
import { listHistoryRungs } from '#lib/db/history-rungs.ts';
import { findPlanDraft, type StoredDraft } from '#lib/db/plan-drafts.ts';
import { findTemplate, listTemplates, type TemplateRow } from '#lib/db/plan-templates.ts';
import {
  findRungs,
  type LibraryRung,
  listClientsWithPlans,
  listPlannableRungs,
  listPlans,
  type PlanRow,
} from '#lib/db/plans.ts';
import { listSettings } from '#lib/db/settings.ts';
import { hasLeave } from '#lib/db/team-members.ts';
import type { ClientHistory, HistoryRung } from '#lib/domain/history.ts';
import { addDays, localDateOf } from '#lib/domain/local-date.ts';
import { type PlanInput, planSchema, planTemplateSchema } from '#lib/schemas/plan.ts';
import type { PlanAddress } from '#lib/schemas/plan-address.ts';
import { planDraftSchema } from '#lib/schemas/plan-draft.ts';
import { type DangerNow, dangersNow } from '#lib/views/dangers-now.ts';
import type { PlanDraft } from '#lib/views/plan-draft.ts';
import type { CopiedPlan } from '#lib/views/plan-form.ts';

/** Days of check-ins that foreseen loads look back on: ten weeks of usual weeks, and what comes before them. */
const LOOK_BACK_DAYS = 120;

export type PlanForm = {
  clientId: string;
  clientName: string;
  today: string;
  versions: PlanRow[];
  rungs: LibraryRung[];
  /** Rungs that versions of the plan name and that are retired since. */
  retired: LibraryRung[];
  skills: SkillRow[];
  goals: GoalRow[];
  dangers: DangerNow[];
  /** The client's last months as the checks read them, without words. */
  history: ClientHistory;
  /** Numbers of the checks that the team or the client has of their own. */
  changed: Partial<Limits>;
  /** Every rung that can be planned, as the checks read it. */
  historyRungs: HistoryRung[];
  draft: (Omit<StoredDraft, 'body'> & { draft: PlanDraft }) | undefined;
  copied: (CopiedPlan & { from: string }) | undefined;
  /** A plan that an assistant prepared, opened to be changed. */
  approval: { id: string; preparedBy: string; plan: PlanInput } | undefined;
  /** What this member saves waits for approval. */
  prepares: boolean;
  sources: { clients: { id: string; name: string }[]; templates: TemplateRow[] };
};

/** What the plan form needs; undefined: no such client here. */
export function loadPlanForm(
  actor: Actor,
  clientId: string,
  now: Date,
  address: PlanAddress = {},
): Promise<PlanForm | undefined> {
  return withTeamPg(actor.scope, async (tx) => {
    const client = await findClient(tx, clientId);
    if (!client) return undefined;
    const today = localDateOf(now, client.zone);
    const from = addDays(today, -LOOK_BACK_DAYS);
    const history = (await loadHistories(tx, [clientId], { from })).get(clientId);
    if (!history) return undefined;
    const rungs = await listPlannableRungs(tx);
    const ids = rungs.map((rung) => rung.id);
    const versions = await listPlans(tx, client.id);
    const gone = versions
      .flatMap(({ items }) => items.map((item) => item.rungId))
      .filter((id) => !ids.includes(id));
    return {
      clientId: client.id,
      clientName: client.name,
      today,
      versions,
      rungs,
      retired: [...(await findRungs(tx, gone)).values()],
      skills: await listSkills(tx),
      goals: await listOpenGoals(tx, client.id),
      dangers: dangersNow(buildView(history, { date: today, instant: now.toISOString() })),
      history: withoutWords(history),
      changed: (await listSettings(tx, [client.id])).of(client.id).changed,
      historyRungs: await listHistoryRungs(tx, ids),
      draft: await openDraft(tx, client.id, address.draft),
      copied: await copyFrom(tx, address),
      approval: await openApproval(tx, actor, client.id, address.approval),
      prepares: actor.role === 'assistant' && !(await hasLeave(tx, actor.memberId ?? '', 'plan')),
      sources: {
        clients: await listClientsWithPlans(tx, client.id),
        templates: await listTemplates(tx),
      },
    };
  });
}

/** What a person wrote is not needed to foresee loads, and need not travel to the browser. */
function withoutWords(history: ClientHistory): ClientHistory {
  return {
    ...history,
    checkIns: history.checkIns.map((checkIn) => ({
      ...checkIn,
      id: checkIn.id.slice(0, 8),
      words: '',
      dangerSigns: [],
    })),
    plans: history.plans.map(({ by: _by, why: _why, notes: _notes, ...plan }) => plan),
    questions: [],
    steps: [],
    seen: [],
    clinicianWords: [],
    films: [],
  };
}

async function openDraft(
  tx: TeamPg,
  clientId: string,
  draftId: string | undefined,
): Promise<PlanForm['draft']> {
  const stored = draftId === undefined ? undefined : await findPlanDraft(tx, clientId, draftId);
  if (!stored) return undefined;
  const { body, ...about } = stored;
  return { ...about, draft: planDraftSchema.parse(body) };
}

async function openApproval(
  tx: TeamPg,
  actor: Actor,
  clientId: string,
  approvalId: string | undefined,
): Promise<PlanForm['approval']> {
  if (approvalId === undefined || !may(actor.role, 'approve-acts')) return undefined;
  const found = await findApproval(tx, approvalId);
  const waits = found?.state === 'waiting' && found.act === 'plan' && found.clientId === clientId;
  const plan = waits ? planSchema.safeParse(found.body) : undefined;
  if (!found || !plan?.success) return undefined;
  return { id: found.id, preparedBy: found.preparedBy, plan: plan.data };
}

/** The newest plan of another client, or a kept template. */
async function copyFrom(tx: TeamPg, { client, template }: PlanAddress): Promise<PlanForm['copied']> {
  if (template !== undefined) {
    const kept = await findTemplate(tx, template);
    if (!kept) return undefined;
    const { body } = planTemplateSchema.parse({ name: kept.name, body: kept.body });
    return { ...body, from: `the kept plan “${kept.name}”` };
  }
  if (client === undefined) return undefined;
  const other = await findClient(tx, client);
  const [newest] = other ? await listPlans(tx, other.id) : [];
  if (!other || !newest) return undefined;
  const { sessionsPerWeek, notes, sessions, items, version } = newest;
  return { sessionsPerWeek, notes, sessions, items, from: `${other.name}, version ${version}` };
}
