/**
 * Positions of the rungs of one ladder, in their order from the easiest: those in use count 1, 2, 3 without a gap, so
 * that the next rung is always one higher; a retired one has the number of the rung in use below it (0: none).
 */
export function numberRungs(rungs: readonly { id: string; retired: boolean }[]): Map<string, number> {
  const positions = new Map<string, number>();
  let position = 0;
  for (const { id, retired } of rungs) {
    if (!retired) position += 1;
    positions.set(id, position);
  }
  return positions;
}

/**
 * The rungs in a new order of those in use; each retired one stays right above the rung it stood above. Undefined where
 * `order` does not name each rung in use once.
 */
export function inOrder<Rung extends { id: string; retired: boolean }>(
  rungs: readonly Rung[],
  order: readonly string[],
): Rung[] | undefined {
  const groups = new Map<string, Rung[]>();
  let key = '';
  groups.set(key, []);
  for (const rung of rungs) {
    if (!rung.retired) key = rung.id;
    groups.set(key, [...(groups.get(key) ?? []), rung]);
  }
  const complete = new Set(order).size === order.length && order.length === groups.size - 1;
  if (!complete || order.some((id) => id === '' || !groups.has(id))) return undefined;
  return ['', ...order].flatMap((id) => groups.get(id) ?? []);
}
