import type { ClientView } from './types.ts';

/**
 * Computes once for each view, which never changes once built: many rules read the same days and standings. `before`:
 * what was computed for the view before, when there is one.
 */
export function oncePerView<Result extends object>(
  compute: (view: ClientView, before?: Result) => Result,
): (view: ClientView) => Result {
  const slot = slots;
  slots += 1;
  return (view) => {
    const there = view.memo[slot] as Result | undefined;
    if (there) return there;
    const result = compute(view, view.earlier?.memo[slot] as Result | undefined);
    view.memo[slot] = result;
    return result;
  };
}

/** A place in `view.memo` for each thing computed: asked a thousand times a view, it is to cost nothing. */
let slots = 0;

export function emptyMemo(): unknown[] {
  return new Array(slots).fill(undefined);
}

/**
 * The same of what follows from check-ins, rungs and plans alone, whatever the evening: as the view before has it, where
 * no check-in came since. Where some came, `carry` makes it of what that view has; without it all is computed anew.
 */
export function oncePerCheckIns<Result extends object>(
  compute: (view: ClientView) => Result,
  carry?: (view: ClientView, before: Result) => Result,
): (view: ClientView) => Result {
  return oncePerView((view, before) => {
    if (!before) return compute(view);
    return view.nothingNew ? before : (carry ?? compute)(view, before);
  });
}
