type Rung = { id: string; position: number };
type Opening = {
  opens: string;
  needsAll: readonly (readonly string[])[];
  orOnSupports: readonly string[];
};
type Ladder = { rungs: readonly Rung[]; openings: readonly Opening[] };

/**
 * Rungs that no order of training ever opens, because openings ask for each other in a circle; in the order given. A rung is
 * held back by the openings of its ladder up to and with it. What is open on a support at once, and what asks for rungs
 * that are in no ladder here (retired ones), holds nothing back.
 */
export function neverOpen(ladders: readonly Ladder[]): string[] {
  const everywhere = new Set(ladders.flatMap((ladder) => ladder.rungs.map((rung) => rung.id)));
  const open = new Set<string>();
  const can = (id: string) => open.has(id) || !everywhere.has(id);
  const stands = ({ needsAll, orOnSupports }: Opening) =>
    orOnSupports.length > 0 || needsAll.every((anyOf) => anyOf.length === 0 || anyOf.some(can));
  for (let before = -1; before < open.size; ) {
    before = open.size;
    for (const ladder of ladders) for (const rung of opened(ladder, stands)) open.add(rung.id);
  }
  return [...everywhere].filter((id) => !open.has(id));
}

function opened({ rungs, openings }: Ladder, stands: (opening: Opening) => boolean): Rung[] {
  const place = (id: string) => rungs.find((rung) => rung.id === id)?.position ?? Number.POSITIVE_INFINITY;
  const lowest = Math.min(
    ...openings.filter((opening) => !stands(opening)).map((opening) => place(opening.opens)),
  );
  return rungs.filter((rung) => rung.position < lowest);
}
