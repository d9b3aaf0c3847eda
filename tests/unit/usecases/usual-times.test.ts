import { describe, expect, it } from 'vitest';
import { DEFAULT_LIMITS } from '#lib/checks/thresholds.ts';
import type { TeamPg } from '#lib/db/client.ts';
import { rememberUsualTimes } from '#lib/usecases/usual-times.ts';

/** Two clients passed a rung in 30 and 40 days; `queries` counts what the database is asked. */
function aTeam(teamId: string, fails = false) {
  const asked = { queries: 0 };
  const query = (sql: string) => {
    asked.queries += 1;
    if (fails) return Promise.reject(new Error('lost'));
    const stays = [30, 40].map((days, at) => ({ clientId: `c${at}`, days, passed: true }));
    return Promise.resolve({
      rows: sql.includes('distinct rung_id') ? [{ id: 'r' }] : [{ rungId: 'r', stays }],
    });
  };
  return { asked, tx: { teamId, client: { query } } as unknown as TeamPg };
}

describe('usual times of a team', () => {
  it('are read once for a team and evening', async () => {
    const { asked, tx } = aTeam('t');
    const times = rememberUsualTimes(() => 0);
    expect((await times(tx, '2026-03-01', DEFAULT_LIMITS)).get('r')).toEqual({ days: 30, passed: 2 });
    expect((await times(tx, '2026-03-01', DEFAULT_LIMITS)).get('r')).toEqual({ days: 30, passed: 2 });
    expect(asked.queries).toBe(2);
  });

  it('are read again for another evening, another team, other limits and after ten minutes', async () => {
    let now = 0;
    const times = rememberUsualTimes(() => now);
    const [one, other] = [aTeam('t'), aTeam('u')];
    await times(one.tx, '2026-03-01', DEFAULT_LIMITS);
    await times(one.tx, '2026-03-02', DEFAULT_LIMITS);
    await times(one.tx, '2026-03-01', { ...DEFAULT_LIMITS, 'forecast.leastDays': 5 });
    await times(other.tx, '2026-03-01', DEFAULT_LIMITS);
    now = 10 * 60_000;
    await times(one.tx, '2026-03-01', DEFAULT_LIMITS);
    expect([one.asked.queries, other.asked.queries]).toEqual([8, 2]);
  });

  it('are asked for again after a reading that failed', async () => {
    const times = rememberUsualTimes(() => 0);
    await expect(times(aTeam('t', true).tx, '2026-03-01', DEFAULT_LIMITS)).rejects.toThrow('lost');
    await expect(times(aTeam('t').tx, '2026-03-01', DEFAULT_LIMITS)).resolves.toHaveProperty('size', 1);
  });
});
