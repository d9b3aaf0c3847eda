import { describe, expect, it } from 'vitest';
import {
  angleInWords,
  firstAngle,
  firstHands,
  firstLine,
  HANDLES,
  handleAt,
  handleMoved,
  handlesOf,
  helpInWords,
  hungStraight,
  lineInWords,
  NOTHING_DRAWN,
} from '#lib/views/looking/drawing.ts';
import { filmSecond, insideFrame } from '#lib/views/looking/film-second.ts';
import { firstToJudge, setsToJudge } from '#lib/views/looking/sets-to-judge.ts';
import { besideAt, isApart } from '#lib/views/looking/side-by-side.ts';
import { faultsToSee, verdictInWords, verdictToClient } from '#lib/views/looking/verdict-words.ts';
import { aCheckIn, aSet, day } from '#tests/fixtures/history-builders.ts';

const SIZE = { width: 720, height: 1280 };
const whole = { line: firstLine(SIZE), angle: firstAngle(SIZE), hands: firstHands(SIZE) };

describe('what is drawn over a film', () => {
  it('begins with a line that hangs straight and a right angle, said no more exactly than placing allows', () => {
    expect(lineInWords(whole.line, SIZE)).toBe('hangs straight in the picture');
    expect(angleInWords(whole.angle, SIZE)).toBe('90° ± 5°');
    const far = { at: { x: 360, y: 640 }, a: { x: 360, y: 0 }, b: { x: 720, y: 640 } };
    expect(angleInWords(far, SIZE)).toMatch(/^90° ± [12]°$/);
    expect(angleInWords({ ...far, a: far.at }, SIZE)).toContain('no angle');
  });

  it('has the handles of what is there, each moved alone and kept inside', () => {
    expect(handlesOf(NOTHING_DRAWN)).toEqual([]);
    expect(handlesOf(whole)).toEqual([...HANDLES]);
    for (const handle of HANDLES) {
      const moved = handleMoved(whole, handle, { x: -50, y: 5000 }, SIZE);
      if (handle === 'line') continue;
      expect(handleAt(moved, handle)).toEqual({ x: 0, y: 1280 });
      const others = HANDLES.filter((other) => other !== handle && other !== 'line');
      for (const other of others) expect(handleAt(moved, other)).toEqual(handleAt(whole, other));
    }
    expect(handleMoved(NOTHING_DRAWN, 'line', { x: 1, y: 1 }, SIZE)).toEqual(NOTHING_DRAWN);
  });

  it('moves the line across as it hangs, and hangs it straight again', () => {
    const leaning = handleMoved(whole, 'line top', { x: 400, y: 64 }, SIZE);
    expect(lineInWords(leaning.line ?? whole.line, SIZE)).toBe('leans 2° ± 0.4° to the right in the picture');
    const moved = handleMoved(leaning, 'line', { x: 200, y: 0 }, SIZE);
    expect((moved.line?.top.x ?? 0) - (moved.line?.bottom.x ?? 0)).toBe(40);
    const straight = hungStraight(moved);
    expect(straight.line?.top.x).toBe(moved.line?.bottom.x);
    expect(hungStraight(NOTHING_DRAWN)).toEqual(NOTHING_DRAWN);
  });
});

describe('two hands drawn over a film', () => {
  const over = (x: number) => ({ ...whole, line: { top: { x, y: 0 }, bottom: { x, y: 1280 } } });

  it('share the weight by where the plumb line comes down, no more exactly than placing allows', () => {
    expect(helpInWords(whole, SIZE)).toBe('50 % ± 5 % of the weight on the hand that helps');
    expect(helpInWords(over(309), SIZE)).toBe('15 % ± 6 % of the weight on the hand that helps');
    const leaning = { ...whole, line: { top: { x: 100, y: 0 }, bottom: { x: 360, y: 1280 } } };
    expect(helpInWords(leaning, SIZE)).toBe(helpInWords(whole, SIZE));
  });

  it('say where the line runs beside both, and what is missing', () => {
    expect(helpInWords(over(280), SIZE)).toContain('none on the hand that helps');
    expect(helpInWords(over(440), SIZE)).toContain('none on the hand that carries');
    expect(helpInWords({ ...whole, line: null }, SIZE)).toContain('draw the plumb line too');
    const { carrying } = whole.hands;
    expect(helpInWords({ ...whole, hands: { carrying, helping: carrying } }, SIZE)).toContain('one place');
  });
});

describe('two films side by side', () => {
  it('belong together at the chosen moments and stay inside of their length', () => {
    const aligned = { here: 2, beside: 5 };
    expect(besideAt(2, aligned, 10)).toBe(5);
    expect(besideAt(2.5, aligned, 10)).toBe(5.5);
    expect(besideAt(0, { here: 4, beside: 1 }, 10)).toBe(0);
    expect(besideAt(9, aligned, 10)).toBe(10);
    expect(isApart(3, 6.05, aligned, 10)).toBe(false);
    expect(isApart(3, 6.2, aligned, 10)).toBe(true);
  });
});

describe('words of a film', () => {
  it('are sought inside of the frame that they belong to, told to the microsecond or not', () => {
    for (let frame = 1; frame < 3_600; frame += 1) {
      const told = Math.floor((frame / 120) * 1e6) / 1e6; // as browsers tell it
      expect(Math.floor(insideFrame(told) * 120)).toBe(frame);
    }
  });

  it('say a moment to the tenth', () => {
    expect([0, 2.449, 9.96, 59.99, 61.2].map(filmSecond)).toEqual([
      '0:00.0',
      '0:02.4',
      '0:09.9',
      '0:59.9',
      '1:01.2',
    ]);
  });

  it('say what was seen, and to the client what to do where nothing could be', () => {
    expect(verdictInWords({ verdict: 'clean', faults: [] })).toBe('clean');
    expect(verdictInWords({ verdict: 'not-clean', faults: ['hips-turn', 'ribs-open'] })).toBe(
      'not clean: hips turn, ribs open',
    );
    expect(verdictToClient({ verdict: 'not-clean', faults: [] }, 'side')).toBe('not clean');
    expect(verdictToClient({ verdict: 'cannot-see', faults: [] }, 'from behind')).toBe(
      'could not be seen: film it again, please, from behind',
    );
    expect(verdictToClient({ verdict: 'cannot-see', faults: [] }, null)).toBe(
      'could not be seen: film it again, please',
    );
    expect(faultsToSee(['hips-turn', 'stopped-by-pain'])).toEqual(['hips-turn']);
  });
});

describe('the sets that a film may show', () => {
  const set = (index: number, side: 'left' | 'right', value: number | null = 14) =>
    aSet({ rungId: 'oah', index, side, value, ...(index === 1 && { clean: false, faults: ['hips-turn'] }) });
  const onDay = aCheckIn(5, {
    sets: [set(0, 'left'), set(1, 'left'), set(2, 'right'), set(3, 'right', null), aSet()],
  });
  const before = aCheckIn(4, { sets: [set(0, 'right')] });
  const at = new Date('2026-03-08T08:00:00Z');
  const verdict = { id: 'v', verdict: 'clean' as const, faults: [], by: 'Ana', at };
  const asked = {
    rungId: 'oah',
    eachSide: true,
    unit: 's',
    side: 'left' as const,
    filmedOn: day(5),
    checkIns: [before, onDay],
    verdicts: [
      { ...verdict, checkInId: onDay.id, side: 'left' as const, index: 0 },
      { ...verdict, checkInId: null, side: 'right' as const, index: null },
    ],
  };

  it('are the done sets of its rung, its own day first, then one for each side that was told nowhere', () => {
    const sets = setsToJudge(asked);
    expect(sets.map(({ label }) => label)).toEqual([
      'left, set 1: 14 s',
      'left, set 2: 14 s',
      'right, set 1: 14 s',
      'Fri 6 Mar, right, set 1: 14 s',
      'left, a try told in no check-in',
      'right, a try told in no check-in',
    ]);
    expect(sets.map(({ told }) => told)).toEqual([
      'told clean',
      'told: hips turn',
      'told clean',
      'told clean',
      '',
      '',
    ]);
    expect(sets.map(({ seen }) => seen?.verdict)).toEqual([
      'clean',
      undefined,
      undefined,
      undefined,
      undefined,
      'clean',
    ]);
    const { eachSide: _, ...rest } = asked;
    expect(setsToJudge({ ...rest, eachSide: false, checkIns: [] }).map(({ label }) => label)).toEqual([
      'a try told in no check-in',
    ]);
  });

  it('begin with the one it was sent with, else with the first of its side that nobody judged', () => {
    const sets = setsToJudge(asked);
    const sentWith = { checkInId: onDay.id, side: 'right' as const, index: 2 };
    expect(firstToJudge(sets, { side: 'left', sentWith })).toBe(`${onDay.id} right 2`);
    expect(firstToJudge(sets, { side: 'left', sentWith: undefined })).toBe(`${onDay.id} left 1`);
    expect(firstToJudge(sets, { side: 'both', sentWith: undefined })).toBe(`${onDay.id} left 1`);
    expect(firstToJudge([], { side: 'both', sentWith: undefined })).toBe('');
  });
});
