import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { type Bench, medianOf } from '../harness.ts';
import { fillTeam } from './fill-team.ts';
import { type Product, startProduct, TEAM } from './product.ts';

const CLIENTS = 1_000;
const AT_ONCE = 20;
const ROUNDS = 7;
const REQUESTS = 120;
/** A page of the same frame that asks the database for nothing of its own: the form for a new client. */
const BARE = '/clients/new';
const BUILT = join(import.meta.dirname, '../../../.next/BUILD_ID');

export function missingBuild(): string | null {
  return existsSync(BUILT) ? null : 'build first: run `npm start` once, or `npx next build`';
}

/** p95 of the board of a large team against p95 of a bare signed-in page of the same server, round by round in turn. */
export const boardBench: Bench = {
  name: 'board',
  what: 'p95 of the board, 1,000 clients, 20 at once, over a bare signed-in page; needs a build',
  missing: missingBuild,
  run: async (scale) => {
    const product = await startProduct();
    try {
      const today = new Intl.DateTimeFormat('en-CA', { timeZone: 'Europe/Berlin' }).format(new Date());
      const filled = await fillTeam(product.db, {
        name: TEAM,
        clients: Math.max(10, Math.round(CLIENTS * scale)),
        today,
      });
      const [board, bare] = await Promise.all([sizeOf(product, '/'), sizeOf(product, BARE)]);
      for (const address of ['/', BARE]) await round(product, address); // warm
      const times: { board: number; bare: number }[] = [];
      for (let turn = 0; turn < ROUNDS; turn += 1) {
        // Which of the two comes first changes: a machine that grows slower must not count against one of them.
        const order = turn % 2 === 0 ? ['/', BARE] : [BARE, '/'];
        const found = new Map<string, number>();
        for (const address of order) found.set(address, await round(product, address));
        times.push({ board: found.get('/') ?? Number.NaN, bare: found.get(BARE) ?? Number.NaN });
      }
      const value = medianOf(times.map((time) => time.board));
      const reference = medianOf(times.map((time) => time.bare));
      return [
        {
          name: 'board',
          value,
          unit: 'ms, p95',
          reference,
          ratio: medianOf(times.map((time) => time.board / time.bare)),
          better: 'lower',
          must: '3x',
          aim: '1.5x',
          sizes: `${filled.clients} clients, ${filled.rows} rows, ${AT_ONCE} at once, ${ROUNDS} rounds of ${REQUESTS}; board ${kb(board)}, bare page ${kb(bare)} of HTML`,
        },
      ];
    } finally {
      await product.stop();
    }
  },
};

/** p95 in milliseconds of REQUESTS readings of an address, AT_ONCE at a time. */
export async function round(product: Product, address: string): Promise<number> {
  const times: number[] = [];
  let left = REQUESTS;
  const reader = async () => {
    while (left > 0) {
      left -= 1;
      const start = performance.now();
      await read(product, address);
      times.push(performance.now() - start);
    }
  };
  await Promise.all(Array.from({ length: AT_ONCE }, reader));
  return times.sort((a, b) => a - b)[Math.ceil(times.length * 0.95) - 1] ?? Number.NaN;
}

async function read({ origin, cookie }: Product, address: string): Promise<string> {
  const answer = await fetch(`${origin}${address}`, { headers: { cookie }, redirect: 'manual' });
  if (answer.status !== 200) throw new Error(`${address} answered ${answer.status}`);
  return answer.text();
}

async function sizeOf(product: Product, address: string): Promise<number> {
  return (await read(product, address)).length;
}

function kb(bytes: number): string {
  return `${Math.round(bytes / 1_024)} KB`;
}
