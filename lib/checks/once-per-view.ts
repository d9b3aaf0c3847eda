import type { ClientView } from './types.ts';

/** Computes once for each view, which never changes once built: many rules read the same days and standings. */
export function oncePerView<Result extends object>(
  compute: (view: ClientView) => Result,
): (view: ClientView) => Result {
  return (view) => {
    const there = view.memo.get(compute) as Result | undefined;
    if (there) return there;
    const result = compute(view);
    view.memo.set(compute, result);
    return result;
  };
}
