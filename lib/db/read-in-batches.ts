import type { TeamPg } from './client.ts';

const ROWS_AT_ONCE = 250;
let opened = 0;

/** The rows of a query about one client ($1 the team, $2 the client), a batch at a time, inside the open transaction. */
export async function* readInBatches<Row extends object>(
  tx: TeamPg,
  sql: string,
  clientId: string,
): AsyncGenerator<Row[]> {
  opened += 1;
  const cursor = `batches_${opened}`;
  await tx.client.query(`declare ${cursor} no scroll cursor for ${sql}`, [tx.teamId, clientId]);
  for (;;) {
    const { rows } = await tx.client.query<Row>(`fetch ${ROWS_AT_ONCE} from ${cursor}`);
    if (rows.length > 0) yield rows;
    if (rows.length < ROWS_AT_ONCE) break;
  }
  await tx.client.query(`close ${cursor}`);
}
