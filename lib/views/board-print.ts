/** What a row says, in seven letters and digits: the same words, the same print (FNV-1a, 32 bits). */
export function printOf(text: string): string {
  let hash = 0x811c9dc5;
  for (let index = 0; index < text.length; index += 1) {
    hash = Math.imul(hash ^ text.charCodeAt(index), 0x01000193);
  }
  return (hash >>> 0).toString(36).padStart(PRINT, '0');
}

const ID = 8;
const PRINT = 7;

type Printed = { clientId: string; print: string };

/** All rows in one string, 15 characters each: the end of the client's id and the print. */
export function packPrints(rows: readonly Printed[]): string {
  return rows.map((row) => keyOf(row.clientId) + row.print).join('');
}

export type BoardChanges<Row> = { changed: Row[]; fresh: Row[]; gone: number };

/**
 * What is different from what a page shows (`packed`), leaving out the clients that were acted on there.
 * `gone`: rows that stood there and do not any more.
 */
export function changesSince<Row extends Printed>(
  packed: string,
  rows: readonly Row[],
  actedOn: ReadonlySet<string>,
): BoardChanges<Row> {
  const shown = unpack(packed);
  const others = rows.filter((row) => !actedOn.has(row.clientId));
  const here = new Set(rows.map((row) => keyOf(row.clientId)));
  const acted = new Set([...actedOn].map(keyOf));
  return {
    changed: others.filter((row) => {
      const before = shown.get(keyOf(row.clientId));
      return before !== undefined && before !== row.print;
    }),
    fresh: others.filter((row) => !shown.has(keyOf(row.clientId))),
    gone: [...shown.keys()].filter((key) => !here.has(key) && !acted.has(key)).length,
  };
}

function keyOf(clientId: string): string {
  return clientId.slice(-ID);
}

function unpack(packed: string): Map<string, string> {
  const size = ID + PRINT;
  return new Map(
    Array.from({ length: packed.length / size }, (_, index) => {
      const entry = packed.slice(index * size, (index + 1) * size);
      return [entry.slice(0, ID), entry.slice(ID)] as const;
    }),
  );
}
