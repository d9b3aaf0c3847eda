import { type Family, type Measure, type Support, TISSUES, type Tissue } from '#lib/domain/vocabulary.ts';
import { drillOf, type LadderState, type RungState } from '#lib/planning/ladders/ladder-state.ts';

/** A rung and its drill as typed. What was typed stays as typed until it is kept. */
export type RungForm = {
  name: string;
  sets: string;
  target: string;
  days: string;
  tries: string;
  usualWeeks: string;
  needsFilm: boolean;
  note: string;
  family: Family | '';
  measure: Measure;
  per: 'both' | 'each' | 'leg';
  secondsPerRep: string;
  share: string;
  helpingShare: string;
  shareSource: string;
  weights: Record<Tissue, string>;
  equipment: string[];
  upsideDown: boolean;
  camera: string;
  swaps: { insteadId: string; tissue: Tissue; support: Support | null; why: string }[];
};

const PERCENT = 100;
/** Digits of a per cent: 0.863 is "86.3". */
const SHARE_DIGITS = 1;

/** A rung of this ladder on the form; undefined: no such rung. */
export function rungForm(state: LadderState, rungId: string): RungForm | undefined {
  const rung = state.rungs.find((one) => one.id === rungId);
  const drill = rung && drillOf(state, rung);
  if (!rung || !drill) return undefined;
  return {
    ...ofRung(rung),
    family: drill.family ?? '',
    measure: drill.measure,
    per: perOf(drill),
    secondsPerRep: text(drill.secondsPerRep),
    share: percentText(drill.share),
    helpingShare: percentText(drill.helpingShare),
    shareSource: drill.shareSource,
    weights: weightTexts(drill.weights),
    equipment: drill.equipment,
    upsideDown: drill.upsideDown,
    camera: drill.camera,
    swaps: rung.swaps,
  };
}

/** A new rung above another: the same drill, nothing said of its mark yet. */
export function newRungForm(state: LadderState, above: string | null): RungForm {
  const like = rungForm(state, above ?? state.rungs[0]?.id ?? '');
  const empty: RungForm = {
    name: '',
    sets: '3',
    target: '',
    days: '2',
    tries: '',
    usualWeeks: '4',
    needsFilm: false,
    note: '',
    family: '',
    measure: 'hold',
    per: 'both',
    secondsPerRep: '',
    share: '100',
    helpingShare: '',
    shareSource: 'by definition',
    weights: weightTexts({}),
    equipment: [],
    upsideDown: false,
    camera: '',
    swaps: [],
  };
  return like ? { ...like, name: '', target: '', note: '', swaps: [] } : empty;
}

/** The form as an edit carries it: numbers are read and judged where it is kept. */
export function rungBody(form: RungForm) {
  const { name, sets, target, days, usualWeeks, needsFilm, note, swaps, per, weights, family, ...drill } =
    form;
  const { tries, ...drillFields } = drill;
  const counted = form.measure === 'reps' || form.measure === 'made-tried';
  return {
    rung: {
      name,
      pass: { sets, target, days, tries: form.measure === 'made-tried' ? tries : '' },
      usualWeeks,
      needsFilm,
      note,
    },
    drill: {
      ...drillFields,
      secondsPerRep: counted ? form.secondsPerRep : '',
      helpingShare: per === 'both' ? '' : form.helpingShare,
      family,
      eachSide: per !== 'both',
      eachIsLeg: per === 'leg',
      weights,
    },
    swaps,
  };
}

function ofRung(rung: RungState) {
  return {
    name: rung.name,
    sets: text(rung.pass.sets),
    target: text(rung.pass.target),
    days: text(rung.pass.days),
    tries: text(rung.pass.tries),
    usualWeeks: text(rung.usualWeeks),
    needsFilm: rung.needsFilm,
    note: rung.note,
  };
}

function perOf({ eachSide, eachIsLeg }: { eachSide: boolean; eachIsLeg: boolean }): RungForm['per'] {
  if (!eachSide) return 'both';
  return eachIsLeg ? 'leg' : 'each';
}

function weightTexts(weights: Partial<Record<Tissue, number>>): Record<Tissue, string> {
  return Object.fromEntries(TISSUES.map((tissue) => [tissue, text(weights[tissue] ?? null)])) as Record<
    Tissue,
    string
  >;
}

function text(value: number | null): string {
  return value === null ? '' : String(value);
}

function percentText(share: number | null): string {
  return share === null ? '' : String(Number((share * PERCENT).toFixed(SHARE_DIGITS)));
}
