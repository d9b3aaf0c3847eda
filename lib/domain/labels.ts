import type {
  DangerSign,
  Fault,
  Ground,
  Measure,
  PainKind,
  PainRegion,
  PainSide,
  Side,
  Support,
} from './vocabulary.ts';

/** Words for the closed lists, as a client reads them. Lower case: they stand inside sentences. */
export const REGION_LABELS: Record<PainRegion, string> = {
  'wrist-back': 'wrist, back',
  'wrist-palm-side': 'wrist, palm side',
  'wrist-thumb-side': 'wrist, thumb side',
  'wrist-little-finger-side': 'wrist, little-finger side',
  'hand-fingers': 'hand or fingers',
  'elbow-inner': 'elbow, inner',
  'elbow-outer': 'elbow, outer',
  'elbow-front': 'elbow, front',
  'elbow-back': 'elbow, back',
  'shoulder-front': 'shoulder, front',
  'shoulder-top': 'shoulder, top',
  'shoulder-side': 'shoulder, side',
  'shoulder-blade': 'shoulder blade',
  neck: 'neck',
  'upper-back': 'upper back',
  ribs: 'ribs',
  'low-back': 'low back',
  'hip-front': 'hip, front',
  groin: 'groin',
  'back-of-thigh': 'back of thigh',
  knee: 'knee',
  'ankle-foot': 'ankle or foot',
  head: 'head',
  eyes: 'eyes',
};

export const FAULT_LABELS: Record<Fault, string> = {
  'hips-turn': 'hips turn',
  'shoulder-sinks': 'shoulder sinks',
  'shoulders-uneven': 'shoulders uneven',
  'elbow-bends': 'elbow bends',
  'ribs-open': 'ribs open',
  'hips-drop': 'hips drop',
  'legs-part': 'legs part',
  'hands-walk': 'hands walk',
  'came-off': 'came off',
  'turned-out': 'turned out',
  'stopped-by-pain': 'stopped by pain',
};

export const DANGER_SIGN_LABELS: Record<DangerSign, string> = {
  'pain-at-rest-or-night': 'pain at rest or at night',
  'numb-or-tingling': 'numb or tingling',
  weakness: 'weak, dropping things',
  swelling: 'swollen',
  'fall-or-pop': 'a fall or a pop',
  'dizzy-or-seeing': 'dizzy, trouble seeing',
  'chest-pain': 'chest pain',
  'fainting-or-breath': 'fainted, or out of breath for no reason',
  'arm-swollen-blue': 'whole arm swollen, heavy or blue',
  'worst-headache': 'sudden worst headache',
  'flashes-or-curtain': 'flashes or a curtain in the eye',
  'hot-joint-fever': 'hot swollen joint with fever',
};

export const GROUND_LABELS: Record<Ground, string> = {
  'hard-floor': 'hard',
  mat: 'mat',
  'sprung-floor': 'sprung',
  grass: 'grass',
  sand: 'sand',
  'thick-mat': 'thick mat',
};

/** What a drill is done on, behind its dose: "4 × 8 s, on rings". */
export const SUPPORT_LABELS: Record<Support, string> = {
  'hard-floor': 'on hard floor',
  'hands-turned-out': 'hands turned out',
  wedge: 'on a wedge',
  'parallel-bars': 'on parallel bars',
  fists: 'on fists',
  rings: 'on rings',
  'soft-ground': 'on soft ground',
  bar: 'on a bar',
  'bar-straps': 'on a bar, with straps',
};

export const PAIN_KIND_LABELS: Record<PainKind, string> = {
  joint: 'joint or tendon',
  muscle: 'sore muscle',
  skin: 'skin',
  stretch: 'stretch',
  cramp: 'cramp',
};

/** "s" for seconds, nothing for counted things; degrees are the library's unit of range. */
export const MEASURE_UNITS: Record<Measure, string> = {
  hold: 's',
  lowering: 's',
  reps: '',
  'made-tried': '',
  'range-up': '°',
  'range-down': 'cm',
};

/** "right elbow, inner"; the middle and both sides need no word. */
export function placeInWords(region: PainRegion, side: PainSide | Side | null): string {
  const where = REGION_LABELS[region];
  return side === 'left' || side === 'right' ? `${side} ${where}` : where;
}

/** First letter upper case, for the start of a sentence or a button. */
export function asSentence(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}
