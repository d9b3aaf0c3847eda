import { BOTH, type Fault } from '../fault.ts';
import { assertSame, meaningOf } from '../meaning.ts';
import { AT, THREE_DAYS_ON } from '../night.ts';
import { pause } from '../pause.ts';
import { doneNights, nightsDone } from '../run-night.ts';
import type { Stage } from '../stage.ts';
import { playNight } from './nights.ts';

const STEP_MS = 8 * 3_600_000;

/** A worker that is there all the time, and a clock that goes on by eight hours at a time. */
async function playOnTime(stage: Stage): Promise<void> {
  const worker = await stage.worker();
  await nightsDone(stage);
  for (let at = Date.parse(AT) + STEP_MS; at <= Date.parse(THREE_DAYS_ON); at += STEP_MS) {
    const instant = new Date(at).toISOString();
    stage.setClock(instant);
    await stage.tick();
    await nightsDone(stage, { at: instant });
  }
  await worker.stop();
}

export const asleep: Fault = {
  name: 'asleep',
  what: 'the machine asleep for three nights, in zones +14 and -11 and where clocks went back',
  kinds: BOTH,
  run: async (table) => {
    const expected = await table.undisturbed('on-time', playOnTime);
    const stage = await table.open();
    const worker = await stage.worker();
    await nightsDone(stage);
    const before = await doneNights(stage);
    worker.child.kill('SIGSTOP');
    stage.setClock(THREE_DAYS_ON);
    await pause(500);
    worker.child.kill('SIGCONT');
    await stage.tick();
    await nightsDone(stage, { at: THREE_DAYS_ON });
    assertSame(await meaningOf(stage), expected);
    return `${(await doneNights(stage)) - before} nights caught up, as on time`;
  },
};

export const clockBack: Fault = {
  name: 'clock-back',
  what: 'the machine’s clock set back by two hours, then by a day, in the middle of a night',
  kinds: BOTH,
  run: async (table) => {
    const expected = await table.undisturbed('night', playNight);
    const stage = await table.open();
    await stage.worker();
    for (const hours of [2, 24, 0]) {
      await pause(200);
      stage.setClock(new Date(Date.parse(AT) - hours * 3_600_000).toISOString());
      await stage.tick();
    }
    await nightsDone(stage);
    await stage.tick();
    await pause(300);
    assertSame(await meaningOf(stage), expected);
    return 'nothing doubled';
  },
};
