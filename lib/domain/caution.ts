import { asSentence, DANGER_SIGN_LABELS, placeInWords } from './labels.ts';
import type { DangerSign, PainKind, PainRegion, PainSide } from './vocabulary.ts';

/** From this joint or tendon score on, the client is told to stop (0-10; "Pain" in the rules: grade `stop`). */
const CAUTION_FROM = 6;

/** Under 18 one step stricter, as every threshold of pain; clinician to confirm. */
const UNDER_18_STRICTER = 1;

export type Caution = { title: string; text: string };
type Told = {
  pain: { region: PainRegion; side: PainSide; value: number; kind: PainKind }[];
  dangerSigns: { sign: DangerSign; region: PainRegion | null; side: PainSide | null }[];
};

/** Signs that wait for nobody: medical help at once (list of the trade's safety rule). */
const AT_ONCE: readonly DangerSign[] = [
  'chest-pain',
  'fainting-or-breath',
  'arm-swollen-blue',
  'worst-headache',
  'flashes-or-curtain',
  'hot-joint-fever',
];
/** Whether a sign waits for nobody: medical help at once. */
export function isAtOnce(sign: DangerSign): boolean {
  return AT_ONCE.includes(sign);
}

const ALL_TRAINING: readonly DangerSign[] = ['dizzy-or-seeing', 'weakness'];

/**
 * What the phone shows before anything is sent, and the server repeats in its answer: one caution for each place
 * with joint or tendon pain of 6 or more (under 18: 5), one for each danger sign. Empty when there is no reason for caution.
 */
export function cautionsOf(told: Told, under18 = false): Caution[] {
  const signs = told.dangerSigns.map(({ sign, region, side }) =>
    ofSign(sign, region && placeInWords(region, side)),
  );
  return [...signs, ...painCautions(told.pain, under18)];
}

/** True when the coach must hear of it at once, not at night. */
export function isUrgent(told: Told, under18 = false): boolean {
  return told.dangerSigns.length > 0 || told.pain.some((score) => isHigh(score, under18));
}

function isHigh(score: Told['pain'][number], under18: boolean): boolean {
  return score.kind === 'joint' && score.value >= CAUTION_FROM - (under18 ? UNDER_18_STRICTER : 0);
}

function ofSign(sign: DangerSign, place: string | null): Caution {
  const title = asSentence(place ? `${DANGER_SIGN_LABELS[sign]}: ${place}` : DANGER_SIGN_LABELS[sign]);
  if (isAtOnce(sign)) {
    return {
      title,
      text: 'Stop training and get medical help at once. Don’t wait for this to be sent or answered.',
    };
  }
  const stop = ALL_TRAINING.includes(sign) ? 'Stop training for today' : 'Stop the work that brings it on';
  return { title, text: `${stop} and see a licensed clinician. Don’t wait for this to be sent.` };
}

function painCautions(scores: Told['pain'], under18: boolean): Caution[] {
  const worst = new Map<string, Told['pain'][number]>();
  for (const score of scores.filter((one) => isHigh(one, under18))) {
    const place = `${score.region} ${score.side}`;
    const known = worst.get(place);
    if (!known || known.value < score.value) worst.set(place, score);
  }
  return [...worst.values()].map(({ region, side, value }) => ({
    title: `${asSentence(placeInWords(region, side))}: ${value} of 10`,
    text: `Stop ${workOn(region)} and see a licensed clinician. Don’t wait for this to be sent.`,
  }));
}

function workOn(region: PainRegion): string {
  if (region.startsWith('wrist') || region === 'hand-fingers') return 'work on the hands';
  if (region.startsWith('elbow')) return 'pulling and pushing work';
  if (region.startsWith('shoulder')) return 'overhead, pulling and pushing work';
  if (region === 'neck' || region === 'head' || region === 'eyes') return 'upside-down work';
  return 'the work that loads it';
}
