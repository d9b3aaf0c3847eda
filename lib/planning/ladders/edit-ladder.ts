import { canonicalJson } from '#lib/domain/canonical-json.ts';
import { editedOpenings } from './edit-openings.ts';
import { editedAbout, editedOrder, retired } from './edit-order.ts';
import type { DrillFields, Edited, LadderEdit } from './ladder-edit.ts';
import { type DrillState, drillOf, type LadderState, type RungState } from './ladder-state.ts';
import { splitRung } from './split-rung.ts';

export type EditContext = {
  newId: () => string;
  /** Rungs somebody has logged, stands or stood on, or had planned: their numbers are in one measure. */
  used: ReadonlySet<string>;
};

/**
 * Does one edit to a ladder. A rung or ladder is never deleted: what is retired stays in `rungs` for all that names it.
 * Refused, with the field: rungs that are not here, an order that does not name each rung in use once, another measure
 * or other sides for a rung that has results already, an opening that asks for what stands after it.
 */
export function editLadder(state: LadderState, edit: LadderEdit, context: EditContext): Edited {
  switch (edit.act) {
    case 'about':
      return { state: editedAbout(state, edit) };
    case 'openings':
      return editedOpenings(state, edit.openings);
    case 'order':
      return editedOrder(state, edit.rungIds);
    case 'retire-ladder':
    case 'put-back-ladder':
      return { state: { ...state, retired: edit.act === 'retire-ladder' } };
    case 'retire-rung':
    case 'put-back-rung':
      return retired(state, edit.rungId, edit.act === 'retire-rung');
    case 'add-rung':
      return addRung(state, edit, context);
    case 'rung':
      return changeRung(state, edit, context);
    case 'split':
      return splitRung(state, edit, context.newId);
  }
}

type Of<Act> = Extract<LadderEdit, { act: Act }>;

function addRung(state: LadderState, edit: Of<'add-rung'>, { newId }: EditContext): Edited {
  const place = edit.above === null ? -1 : state.rungs.findIndex((rung) => rung.id === edit.above);
  if (edit.above !== null && place < 0) return { wrong: { above: 'is not a rung of this ladder' } };
  const drill: DrillState = { ...edit.drill, id: newId(), name: edit.rung.name };
  const rung: RungState = {
    ...edit.rung,
    id: newId(),
    drillId: drill.id,
    retired: false,
    swaps: [],
  };
  return {
    state: {
      ...state,
      rungs: state.rungs.toSpliced(place + 1, 0, rung),
      drills: [...state.drills, drill],
    },
  };
}

function changeRung(state: LadderState, edit: Of<'rung'>, context: EditContext): Edited {
  const rung = state.rungs.find((one) => one.id === edit.rungId);
  const before = rung && drillOf(state, rung);
  if (!rung || !before) return { wrong: { rungId: 'is not a rung of this ladder' } };
  if (edit.swaps.some((swap) => swap.insteadId === rung.id && swap.support === null))
    return {
      wrong: { swaps: 'this rung is a swap for itself only on a support: choose one, or another rung' },
    };
  const shared = state.rungs.filter((one) => one.drillId === rung.drillId);
  const touched = edit.drillFor === 'all' ? shared : [rung];
  const changed = canonicalJson(edit.drill) !== canonicalJson(fieldsOf(before));
  if (changed) {
    const wrong = measuredOtherwise(
      before,
      edit.drill,
      touched.some((one) => context.used.has(one.id)),
    );
    if (wrong) return { wrong };
  }
  const own = changed && edit.drillFor === 'this' && shared.length > 1;
  const drill: DrillState = {
    ...edit.drill,
    id: own ? context.newId() : before.id,
    name: own || shared.length === 1 ? edit.rung.name : before.name,
  };
  const after: RungState = { ...rung, ...edit.rung, drillId: drill.id, swaps: edit.swaps };
  return {
    state: {
      ...state,
      rungs: state.rungs.map((one) => (one.id === rung.id ? after : one)),
      drills: own
        ? [...state.drills, drill]
        : state.drills.map((one) => (one.id === before.id && (changed || shared.length === 1) ? drill : one)),
    },
  };
}

/** What the form holds of a drill. */
export function fieldsOf({ id: _id, name: _name, ...fields }: DrillState): DrillFields {
  return fields;
}

function measuredOtherwise(
  before: DrillFields,
  after: DrillFields,
  used: boolean,
): Record<string, string> | undefined {
  if (!used) return undefined;
  const way = 'results are kept in it. Add a new rung beside this one and retire this one';
  if (before.measure !== after.measure) return { measure: `cannot change: ${way}` };
  if (before.eachSide !== after.eachSide) return { per: `cannot change: ${way}` };
  return undefined;
}
