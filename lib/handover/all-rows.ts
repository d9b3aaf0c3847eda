import type { Batches } from '#lib/domain/record.ts';

/** All rows at once, of tables that are small. */
export async function allRows<Row>(batches: Batches<Row>): Promise<Row[]> {
  const rows: Row[] = [];
  for await (const batch of batches()) rows.push(...batch);
  return rows;
}
