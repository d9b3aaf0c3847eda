import type { ReasonAct } from '#lib/schemas/board.ts';
import { datedDay } from '#lib/views/say-date.ts';
import type { Hold } from './hold-after-act.ts';

/** What was done, in the one line that stands where the row was. `step`: the proposed one, in words. */
export function lineOfAct(done: { input: ReasonAct; hold: Hold; step: string; today: string }): string {
  const { input, hold, step, today } = done;
  if (input.act === 'known') return `Known: ${input.words}. Back by itself when worse or with something new.`;
  if (input.act === 'not-known') return 'Not folded any more: read the board again for its place.';
  const words = input.words === '' ? '' : `: “${input.words}”`;
  if (hold.act === 'take') {
    const verb = input.act === 'take' && input.draft ? 'Taken' : 'Step';
    return `With the client until ${datedDay(hold.until, today)}. ${verb}: ${input.words || step}`;
  }
  if (hold.act === 'put-aside') {
    return `Put aside until ${hold.until ? datedDay(hold.until, today) : 'it changes'}${words}`;
  }
  return `Done${verdictWords(input)}${words}`;
}

function verdictWords(input: ReasonAct): string {
  if (input.act !== 'done' || input.rightToTell === undefined) return '';
  return input.rightToTell ? ', right to tell me' : ', not needed';
}
