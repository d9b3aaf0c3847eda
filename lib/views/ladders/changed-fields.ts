import { canonicalJson } from '#lib/domain/canonical-json.ts';
import { drillOf, type LadderState, type RungState } from '#lib/planning/ladders/ladder-state.ts';

/** The fields that an edit changed, by name and never by value: "pass mark of Tuck", "order". For the audit. */
export function changedFields(before: LadderState, after: LadderState): string[] {
  const fields = ladderFields(before, after);
  for (const rung of after.rungs) {
    const old = before.rungs.find((one) => one.id === rung.id);
    fields.push(
      ...(old ? rungFields(old, rung).map((field) => `${field} of ${old.name}`) : [`new rung ${rung.name}`]),
    );
    const [was, is] = [old && drillOf(before, old), drillOf(after, rung)];
    const profile = { id: '', name: '' };
    if (old && was && is && differs({ ...was, ...profile }, { ...is, ...profile }))
      fields.push(`drill of ${old.name}`);
  }
  return fields;
}

function ladderFields(before: LadderState, after: LadderState): string[] {
  const names = {
    name: 'name',
    partId: 'part',
    family: 'stress family',
    clean: 'clean',
    faults: 'faults',
    openings: 'openings',
  };
  const fields = Object.entries(names).flatMap(([key, word]) =>
    differs(before[key as keyof LadderState], after[key as keyof LadderState]) ? [word] : [],
  );
  if (before.retired !== after.retired) fields.push(after.retired ? 'retired' : 'put back');
  const known = (state: LadderState) =>
    state.rungs.map((rung) => rung.id).filter((id) => before.rungs.some((rung) => rung.id === id));
  if (differs(known(before), known(after))) fields.push('order');
  return fields;
}

function rungFields(before: RungState, after: RungState): string[] {
  const names = {
    name: 'name',
    pass: 'pass mark',
    usualWeeks: 'usual weeks',
    needsFilm: 'film needed',
    note: 'note',
    swaps: 'swaps',
  };
  const fields = Object.entries(names).flatMap(([key, word]) =>
    differs(before[key as keyof RungState], after[key as keyof RungState]) ? [word] : [],
  );
  if (before.retired !== after.retired) fields.push(after.retired ? 'retiring' : 'putting back');
  return fields;
}

function differs(one: unknown, other: unknown): boolean {
  return canonicalJson(one) !== canonicalJson(other);
}
