import { MEASURE_UNITS, placeInWords, SUPPORT_LABELS } from '#lib/domain/labels.ts';
import type { Side } from '#lib/domain/vocabulary.ts';
import type { GapLadder, GapRung } from '#lib/planning/gaps/gap-types.ts';
import { isRange, rungsOfDrill } from '#lib/planning/start/same-drill.ts';
import type { StartAnswer, StartTest } from '#lib/planning/start/start-types.ts';

/** The most that is asked in one set, try or measure: the highest target of the drill's pass marks. */
export function mostAsked(ladder: GapLadder, rung: GapRung): number {
  return Math.max(...rungsOfDrill(ladder, rung).map(({ pass }) => pass.target));
}

/** What the test is called: a range by its ladder, everything else by the drill. */
export function testName(ladder: GapLadder, rung: GapRung): string {
  return isRange(rung) ? ladder.name : rung.name;
}

/** How a test is done, in plain words for the client. */
export function howToTest(test: StartTest, ladder: GapLadder, rung: GapRung): string {
  const most = mostAsked(ladder, rung);
  const sets = test.sets === 1 ? 'One set' : `${test.sets} sets, two minutes of rest between`;
  switch (rung.measure) {
    case 'hold':
      return `${sets}. Hold as long as it is clean, at most ${most} s. Write each set in seconds.`;
    case 'lowering':
      return `${test.sets} slow ways down, two minutes of rest between. As even as you can, at most ${most} s. Write each in seconds.`;
    case 'reps':
      return `${sets}. As many clean reps as go, at most ${most}. Stop before the first that is not clean.`;
    case 'made-tried':
      return `${test.sets} tries, with rest. Count the good ones.`;
    case 'range-up':
      return 'Warm up first. Go only as far as it goes without force. Measure the angle; somebody may help.';
    default:
      return 'Warm up first. Go only as far as it goes without force. Measure in cm; past the mark is minus.';
  }
}

/** "Done: 12, 10, 8 s, clean", "Cannot yet", "Hurts, 4 of 10, left wrist, back". */
export function answerInWords(answer: StartAnswer, rung: Pick<GapRung, 'measure'>): string {
  if (answer.outcome === 'cannot') return 'Cannot yet';
  if (answer.outcome === 'hurts') {
    const where = answer.region ? `, ${placeInWords(answer.region, answer.side)}` : '';
    return `Hurts, ${answer.pain} of 10${where}`;
  }
  const unit = MEASURE_UNITS[rung.measure];
  const values = answer.values.join(', ');
  if (rung.measure === 'made-tried') return `${values} good of ${answer.tried} tries`;
  const clean = answer.clean === false ? ', not clean' : answer.clean === true ? ', clean' : '';
  const measured = unit === '°' ? `${values}°` : [values, unit].filter((one) => one !== '').join(' ');
  return `${measured}${clean}`;
}

export function sideInWords(side: Side): string {
  return side === 'both' ? '' : `${side} side`;
}

/** "on parallel bars"; empty: as the drill says. */
export function onInWords(on: keyof typeof SUPPORT_LABELS | null): string {
  return on === null ? '' : SUPPORT_LABELS[on];
}
