import type { TeamPg } from '#lib/db/client.ts';
import { loadGapLibrary } from '#lib/db/gap-library.ts';
import { AppError } from '#lib/errors.ts';
import type { LadderEdit } from '#lib/planning/ladders/ladder-edit.ts';
import type { LadderState } from '#lib/planning/ladders/ladder-state.ts';
import { liveRungs } from '#lib/planning/ladders/ladder-state.ts';
import { neverOpen } from '#lib/planning/ladders/never-open.ts';
import { numberRungs } from '#lib/planning/ladders/number-rungs.ts';

/** Refuses openings that, with those of the other ladders, ask for each other in a circle. */
export async function assertOpen(tx: TeamPg, after: LadderState, edit: LadderEdit): Promise<void> {
  if (edit.act !== 'openings') return;
  const library = await loadGapLibrary(tx);
  const ids = new Map(
    library.flatMap(({ rungs }) => rungs.map((rung): [string, string] => [rung.key ?? rung.id, rung.id])),
  );
  const idOf = (key: string) => ids.get(key) ?? key;
  const others = library
    .filter((ladder) => ladder.id !== after.id)
    .map((ladder) => ({
      rungs: ladder.rungs,
      openings: ladder.openings.map((opening) => ({
        ...opening,
        opens: idOf(opening.opens),
        needsAll: opening.needsAll.map((anyOf) => anyOf.map(idOf)),
      })),
    }));
  const positions = numberRungs(after.rungs);
  const own = {
    rungs: liveRungs(after).map(({ id }) => ({ id, position: positions.get(id) ?? 0 })),
    openings: edit.openings,
  };
  const closed = new Set(neverOpen([...others, own]));
  const wrong = edit.openings.flatMap((opening, at) =>
    opening.needsAll.flatMap((anyOf, need) =>
      anyOf.every((id) => closed.has(id)) ? [[`edit.openings.${at}.needsAll.${need}.0`, CIRCLE]] : [],
    ),
  );
  const [first] = wrong;
  if (first) throw new AppError('invalid', `${first[0]}: ${first[1]}`, { fields: Object.fromEntries(wrong) });
}

const CIRCLE =
  'asks back, through openings of its own, for what this opens: neither would ever open. Choose another rung';
