import type { ClientView } from './types.ts';

/** Computes once for each view, which never changes once built: many rules read the same days and standings. */
export function oncePerView<Result>(compute: (view: ClientView) => Result): (view: ClientView) => Result {
  const known = new WeakMap<ClientView, { result: Result }>();
  return (view) => {
    const there = known.get(view);
    if (there) return there.result;
    const result = compute(view);
    known.set(view, { result });
    return result;
  };
}
