import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type ShowFrame, stepBack, stepOn } from '#app/(coach)/clips/[clipId]/_parts/step-frame.ts';

/** A film of frames of these lengths. */
function film(lengths: readonly number[]) {
  const starts: number[] = [];
  let end = 0;
  for (const length of lengths) {
    starts.push(end);
    end += length;
  }
  let seeks = 0;
  const show: ShowFrame = async (seconds) => {
    seeks += 1;
    return starts.findLast((start) => start <= seconds + 1e-9) ?? 0;
  };
  return { starts, show, seeks: () => seeks };
}
const alike = (count: number, fps: number) => film(Array.from({ length: count }, () => 1 / fps));

describe('a step of a frame', () => {
  it('goes to each frame in turn, there and back, with one look where frames are alike', async () => {
    for (const fps of [24, 25, 29.97, 30, 60, 120]) {
      const { starts, show, seeks } = alike(40, fps);
      const steps = { show, frame: 1 / fps, isMeasured: true };
      let at = 0;
      for (const start of starts.slice(1)) {
        at = await stepOn({ ...steps, from: at });
        expect(at).toBe(start);
      }
      expect(seeks()).toBe(39);
      for (const start of starts.slice(0, -1).reverse()) {
        at = await stepBack({ ...steps, from: at });
        expect(at).toBe(start);
      }
      expect(seeks()).toBe(78);
    }
  });

  it('stays at both ends', async () => {
    const { starts, show } = alike(3, 30);
    const steps = { show, frame: 1 / 30, isMeasured: true };
    expect(await stepOn({ ...steps, from: starts[2] ?? 0 })).toBe(starts[2]);
    expect(await stepBack({ ...steps, from: 0 })).toBe(0);
  });

  it('passes over none where lengths differ, nor where the film says half of what it has', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.array(fc.integer({ min: 20, max: 120 }), { minLength: 3, maxLength: 12 }),
        async (lengths) => {
          const { starts, show } = film(lengths.map((ms) => ms / 1000));
          const steps = { show, frame: 1 / 30, isMeasured: false };
          let at = 0;
          for (const start of starts.slice(1)) {
            at = await stepOn({ ...steps, from: at });
            expect(at).toBe(start);
          }
          for (const start of starts.slice(0, -1).reverse()) {
            at = await stepBack({ ...steps, from: at });
            expect(at).toBe(start);
          }
        },
      ),
      { numRuns: 300 },
    );
    const { starts, show } = alike(10, 60);
    expect(await stepOn({ show, from: 0, frame: 1 / 30, isMeasured: false })).toBe(starts[1]);
  });
});
