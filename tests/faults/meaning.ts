import type { Stage } from './stage.ts';

/** Ids that are drawn anew each time, and the instants at which work was done, as true or false. */
const LINES: Record<string, string> = {
  reason: `select c.name || ' ' || (to_jsonb(r) - '{id,team_id,client_id}'::text[])::text as line
    from reason r join client c on c.id = r.client_id`,
  'reason event': `select c.name || ' ' || r.kind || ' ' || r.subject_key || ' ' || r.raised_at || ' '
      || (to_jsonb(e) - '{id,team_id,reason_id}'::text[])::text as line
    from reason_event e join reason r on r.id = e.reason_id join client c on c.id = r.client_id`,
  'reason outcome': `select c.name || ' ' || r.kind || ' ' || r.subject_key || ' '
      || (to_jsonb(o) - '{id,team_id,reason_id,at}'::text[])::text as line
    from reason_outcome o join reason r on r.id = o.reason_id join client c on c.id = r.client_id`,
  ledger: `select c.name || ' ' || (to_jsonb(n) - '{team_id,client_id,done_at,failed_at}'::text[]
      || jsonb_build_object('done', n.done_at is not null, 'failed', n.failed_at is not null))::text as line
    from night_client n join client c on c.id = n.client_id`,
  run: `select (to_jsonb(r) - '{id,team_id,started_at,finished_at}'::text[]
      || jsonb_build_object('finished', r.finished_at is not null))::text as line from night_run r`,
  'check-in': `select c.name || ' ' || (to_jsonb(i) - '{team_id,client_id}'::text[])::text as line
    from check_in i join client c on c.id = i.client_id`,
  set: `select (to_jsonb(s) - '{id}'::text[])::text as line from check_in_set s`,
  pain: `select (to_jsonb(p) - '{id}'::text[])::text as line from pain_score p`,
  day: `select (to_jsonb(d))::text as line from day_rollup d`,
  outbox: `select (to_jsonb(o) - '{id,created_at,sent_at,attempts,last_error}'::text[]
      || jsonb_build_object('sent', o.sent_at is not null))::text as line from outbox o`,
};

/** Every row that nights and check-ins write, byte for byte, one a line, in one order. */
export async function meaningOf(stage: Stage): Promise<string[]> {
  const lines: string[] = [];
  for (const [what, text] of Object.entries(LINES)) {
    const rows = await stage.sql<{ line: string }>(
      `select line from (${text}) each order by line collate "C"`,
    );
    lines.push(...rows.map(({ line }) => `${what}: ${line}`));
  }
  return lines;
}

/** Throws with the first lines that differ. */
export function assertSame(found: readonly string[], expected: readonly string[]): void {
  const [here, there] = [new Set(found), new Set(expected)];
  const missing = expected.filter((line) => !here.has(line));
  const more = found.filter((line) => !there.has(line));
  if (missing.length + more.length === 0 && found.length === expected.length) return;
  const shown = (lines: string[]) =>
    lines
      .slice(0, 3)
      .map((line) => `\n    ${line.slice(0, 300)}`)
      .join('');
  throw new Error(
    `not as the undisturbed run: ${missing.length} lines missing${shown(missing)}\n  ${more.length} lines more${shown(more)}\n  ${found.length} lines against ${expected.length}`,
  );
}
