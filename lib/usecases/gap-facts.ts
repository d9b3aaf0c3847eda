import type { ClientView } from '#lib/checks/types.ts';
import { buildView } from '#lib/checks/view.ts';
import type { TeamPg } from '#lib/db/client.ts';
import { type ClientRow, findClient } from '#lib/db/clients.ts';
import { loadGapLibrary } from '#lib/db/gap-library.ts';
import { HISTORY_DAYS, loadHistories } from '#lib/db/histories.ts';
import { listSettings } from '#lib/db/settings.ts';
import { addDays, localDateOf } from '#lib/domain/local-date.ts';
import { bodyStateOf } from '#lib/planning/gaps/body-state.ts';
import type { GapContext } from '#lib/planning/gaps/gap-context.ts';

export type GapFacts = { client: ClientRow; today: string; view: ClientView; context: GapContext };

/** What the gap finder needs to know of a client today; undefined: no such client here. */
export async function loadGapFacts(tx: TeamPg, clientId: string, now: Date): Promise<GapFacts | undefined> {
  const client = await findClient(tx, clientId);
  if (!client) return undefined;
  const today = localDateOf(now, client.zone);
  const history = (await loadHistories(tx, [clientId], { from: addDays(today, -HISTORY_DAYS) })).get(
    clientId,
  );
  if (!history) return undefined;
  const { limits } = (await listSettings(tx, [clientId])).of(clientId);
  const view = buildView(history, { date: today, instant: now.toISOString() }, limits);
  const newest = history.plans.reduce<(typeof history.plans)[number] | undefined>(
    (known, one) => (!known || one.version > known.version ? one : known),
    undefined,
  );
  return {
    client,
    today,
    view,
    context: {
      library: await loadGapLibrary(tx),
      date: today,
      under18: client.under18,
      bodyMassKg: history.client.bodyMassKg,
      limits: history.limits,
      body: bodyStateOf(view, limits),
      plan: view.planOn(today) ?? newest ?? null,
      placements: history.placements,
      numbers: limits,
    },
  };
}
