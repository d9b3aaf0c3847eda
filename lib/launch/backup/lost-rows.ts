type Counts = Readonly<Record<string, number>>;

/**
 * What a backup lacks, a sentence for each table; empty: nothing. While it was taken rows may have come and gone, so a
 * table may hold what the source held before, after, or between: `changed` says how many rows were put in or taken out.
 * A table without a row whose source had some at both ends is always a fault.
 */
export function lostRows(source: { before: Counts; after: Counts; changed: Counts }, kept: Counts): string[] {
  const tables = Object.keys(source.before).filter((table) => table in source.after);
  return tables.flatMap((table) => {
    const [before, after] = [source.before[table] ?? 0, source.after[table] ?? 0];
    const [least, most] = [Math.min(before, after), Math.max(before, after)];
    const moved = source.changed[table] ?? 0;
    const has = kept[table];
    if (has === undefined) return [`${table}: the table is missing`];
    if (has === 0 && least > 0) return [`${table}: 0 rows, ${least} in the source`];
    if (has >= least - moved && has <= most + moved) return [];
    return [`${table}: ${has} rows, ${least === most ? least : `${least} to ${most}`} in the source`];
  });
}
