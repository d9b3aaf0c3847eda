import type { LibraryRung } from '#lib/db/plans.ts';
import { kitNeeded } from '#lib/domain/kit.ts';
import { AppError } from '#lib/errors.ts';
import type { PlanItemInput } from '#lib/schemas/plan.ts';

type Rungs = ReadonlyMap<string, LibraryRung>;
type Refuse = (field: string, message: string) => void;

/**
 * Lines as they are kept: a rung done on each side is planned for left and right apart, others for both together.
 * Refuses what does not fit the ladders, by line and field.
 */
export function planLinesBySide(items: PlanItemInput[], rungs: Rungs): PlanItemInput[] {
  const fields: Record<string, string> = {};
  const lines = items.flatMap((item, index): PlanItemInput[] => {
    const rung = rungs.get(item.rungId);
    const refuse: Refuse = (field, message) => {
      fields[`items.${index}.${field}`] = message;
    };
    if (!rung) {
      refuse('rungId', 'is not a rung of your ladders: choose one from the list');
      return [];
    }
    checkLine(item, rung, rungs, refuse);
    return rung.eachSide && item.side === 'both'
      ? (['left', 'right'] as const).map((side) => ({ ...item, side }))
      : [item];
  });
  const [first] = Object.entries(fields);
  if (first) throw new AppError('invalid', `${first[0]}: ${first[1]}`, { fields });
  refuseTwice(lines, items);
  return lines;
}

function checkLine(item: PlanItemInput, rung: LibraryRung, rungs: Rungs, refuse: Refuse): void {
  if (!rung.eachSide && item.side !== 'both') {
    refuse('side', `"${rung.name}" is done with both sides together: choose both`);
  }
  const partner = item.pairedWith === null ? undefined : rungs.get(item.pairedWith);
  if (partner && partner.ladderId !== rung.ladderId) {
    refuse('pairedWith', `"${partner.name}" is of another ladder: a pyramid is two rungs of one ladder`);
  }
  if (item.noKitRungId === null) return;
  const instead = rungs.get(item.noKitRungId);
  const kit = instead ? kitNeeded(instead.equipment) : [];
  if (!instead) refuse('noKitRungId', 'is not a rung of your ladders: choose one from the list');
  else if (kit.length > 0) {
    const needs = `"${instead.name}" needs ${kit.join(' and ')}`;
    refuse('noKitRungId', `${needs}: choose one that needs no kit, or none`);
  }
}

/** `both` beside `left` of one rung is one line too many once it is split. */
function refuseTwice(lines: PlanItemInput[], items: PlanItemInput[]): void {
  const seen = new Set<string>();
  for (const { session, rungId, side } of lines) {
    const key = `${session} ${rungId} ${side}`;
    if (!seen.has(key)) {
      seen.add(key);
      continue;
    }
    const index = items.findLastIndex((one) => one.session === session && one.rungId === rungId);
    const message = `is already in session ${session} for the ${side} side`;
    throw new AppError('invalid', `items.${index}.side: ${message}`, {
      fields: { [`items.${index}.side`]: message },
    });
  }
}
