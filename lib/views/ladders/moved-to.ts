/** The list with one of its items at another place; the same list where nothing moves. Places outside are the ends. */
export function movedTo<Item extends { id: string }>(items: Item[], id: string, to: number): Item[] {
  const from = items.findIndex((item) => item.id === id);
  const [item] = items.slice(from, from + 1);
  const place = Math.min(Math.max(to, 0), items.length - 1);
  if (from < 0 || !item || place === from) return items;
  return items.toSpliced(from, 1).toSpliced(place, 0, item);
}
