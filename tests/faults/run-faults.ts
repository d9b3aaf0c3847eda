import { execFileSync } from 'node:child_process';
import type { QueuePlace } from '#lib/jobs/backend.ts';
import type { Fault } from './fault.ts';
import { meaningOf } from './meaning.ts';
import { pause } from './pause.ts';
import { openStage, type Sizes, type Stage } from './stage.ts';
import { openWorld, ROOT, SECRET, type World } from './world.ts';

export type Row = {
  name: string;
  kind: QueuePlace['kind'];
  seconds: number;
  failure: string | null;
  seen: string;
};
export type Options = {
  faults: readonly Fault[];
  sizes: Sizes;
  seed: number;
  /** Path of a redis-server; undefined: the half of the faults on Redis is left out. */
  redisServer: string | undefined;
  said?: (row: Row) => void;
};

/** Plays every fault on every backend that it names, one after the other, and says what came of each. */
export async function runFaults({ faults, sizes, seed, redisServer, said }: Options): Promise<Row[]> {
  const world = await openWorld({ redisServer });
  const rows: Row[] = [];
  // Interrupted by hand: nothing of ours is left at work.
  let isLeaving = false;
  const leave = () => {
    if (isLeaving) return; // npm hands a signal on that the terminal has sent already
    isLeaving = true;
    void world.close().finally(() => process.exit(1));
  };
  for (const signal of ['SIGINT', 'SIGTERM'] as const) process.on(signal, leave);
  try {
    await arrange(world, sizes, seed);
    for (const kind of ['postgres', 'redis'] as const) {
      if (kind === 'redis' && !world.redis) continue;
      const played = new Map<string, string[]>();
      for (const [index, fault] of faults.entries()) {
        if (!fault.kinds.includes(kind)) continue;
        const row = await play(world, fault, { kind, sizes, seed: seed + index, played });
        rows.push(row);
        said?.(row);
      }
    }
  } finally {
    for (const signal of ['SIGINT', 'SIGTERM'] as const) process.off(signal, leave);
    await world.close();
  }
  return rows;
}

type Play = { kind: QueuePlace['kind']; sizes: Sizes; seed: number; played: Map<string, string[]> };

async function play(world: World, fault: Fault, { played, ...options }: Play): Promise<Row> {
  const open: Stage[] = [];
  const stageNow = async () => {
    const stage = await openStage(world, { ...options, template: 'arranged' });
    open.push(stage);
    return stage;
  };
  const closeAll = async () => {
    for (const stage of open.splice(0)) await stage.close();
  };
  const began = Date.now();
  const told = (failure: string | null, seen: string): Row => ({
    name: fault.name,
    kind: options.kind,
    seconds: (Date.now() - began) / 1000,
    failure,
    seen,
  });
  try {
    const seen = await fault.run({
      open: stageNow,
      undisturbed: async (name, acts) => {
        const known = played.get(name);
        if (known) return known;
        const stage = await stageNow();
        await acts(stage);
        const lines = await meaningOf(stage);
        await stage.close();
        open.splice(open.indexOf(stage), 1);
        played.set(name, lines);
        return lines;
      },
    });
    const unheard = open.flatMap((stage) => stage.unhandled());
    return unheard.length === 0 ? told(null, seen) : told(unheard.join('\n'), seen);
  } catch (error) {
    return told(
      error instanceof Error ? error.message : String(error),
      open.flatMap((stage) => stage.lastLines()).join('\n'),
    );
  } finally {
    await closeAll().catch(async () => {
      await pause(1_000);
      await closeAll();
    });
  }
}

/** The database that every stage is cloned from. */
async function arrange(world: World, sizes: Sizes, seed: number): Promise<void> {
  const arranged = await world.clone('migrated', 'arranged');
  execFileSync(process.execPath, [world.programs.arrange], {
    cwd: ROOT,
    env: {
      ...process.env,
      DATABASE_URL: arranged.ownerUrl,
      APP_DATABASE_URL: arranged.appUrl,
      PLUMBLINE_SECRET: SECRET,
      FAULT_CLIENTS: String(sizes.clients),
      FAULT_SEED: String(seed),
    },
    stdio: ['ignore', 'inherit', 'inherit'],
  });
}
