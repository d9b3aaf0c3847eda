import { URGENT_KINDS } from '#lib/checks/urgency.ts';

/**
 * A condition on a reason: true but for a step up of a client with a danger sign or pain of 6 or more that is not closed,
 * whether it is open, put aside or with the client. `reason`: the name of the row in the query.
 */
export function notHeldBack(reason: string): string {
  const urgent = URGENT_KINDS.map((kind) => `'${kind}'`).join(', ');
  return `(${reason}.kind <> 'step-up-earned' or not exists (select from reason urgent
    where urgent.team_id = ${reason}.team_id and urgent.client_id = ${reason}.client_id
      and urgent.closed_at is null and urgent.kind in (${urgent})))`;
}
