import { TISSUES } from '#lib/domain/vocabulary.ts';
import { TISSUE_WORDS } from '../tissue-words.ts';

/** A refused field: its control, what the form calls it, and what is wrong. Without a control: what is wrong. */
export type RefusedPlace = { id: string | null; name: string; message: string };

const PLACES: Record<string, [id: string, name: string]> = {
  name: ['ladder-name', 'Name of the ladder'],
  partId: ['ladder-part', 'Part it serves'],
  clean: ['ladder-clean', 'What clean means'],
  above: ['above', 'Where it stands'],
  measure: ['drill-measure', 'Counted as'],
  per: ['drill-per', 'Sides'],
  'rung.name': ['rung-name', 'Name of the rung'],
  'rung.pass.sets': ['rung-sets', 'Sets'],
  'rung.pass.target': ['rung-target', 'Target'],
  'rung.pass.tries': ['rung-tries', 'Of tries'],
  'rung.pass.days': ['rung-days', 'On how many days'],
  'rung.usualWeeks': ['rung-usualWeeks', 'Usual weeks'],
  'rung.note': ['rung-note', 'Note'],
  'drill.secondsPerRep': ['drill-tempo', 'Tempo'],
  'drill.share': ['drill-share', '% of body weight'],
  'drill.helpingShare': ['drill-helping-share', 'Helping hand, %'],
  'drill.shareSource': ['drill-share-source', 'Where that number comes from'],
  'drill.camera': ['drill-camera', 'Where the camera stands'],
  'drill.weights': [`weight-${TISSUES[0]}`, 'Stress by tissue'],
};

const PARTS: Record<string, [suffix: string, name: string]> = {
  opens: ['opens', 'the rung that opens'],
  needsAll: ['more', 'what must stand before'],
  words: ['words', 'in words'],
};

/** The refused fields of a form of the ladders, in the words of the form; in the order they were refused. */
export function refusedPlaces(fields: Readonly<Record<string, string>>): RefusedPlace[] {
  return Object.entries(fields).map(([path, message]) => {
    const [id, name] = placeOf(path.replace(/^edit\./, '')) ?? [null, ''];
    return { id, name, message };
  });
}

function placeOf(path: string): [id: string, name: string] | undefined {
  const known = PLACES[path];
  if (known) return known;
  const [list = '', first = '', field = '', need = '', choice = ''] = path.split('.');
  const number = Number(first) + 1;
  if (list === 'drill') return weightPlace(field);
  if (list === 'swaps' && field === 'why') return [`swap-${first}-why`, `Swap ${number}, why`];
  if (list === 'swaps' && field) return [`swap-${first}-instead`, `Swap ${number}, do instead`];
  if (list === 'steps' && first) return stepPlace(path, first, number);
  if (list !== 'openings' || !PARTS[field]) return undefined;
  if (choice) return [`opening-${first}-need-${need}-${choice}`, `Opening ${number}, a rung it asks for`];
  return [`opening-${first}-${PARTS[field][0]}`, `Opening ${number}, ${PARTS[field][1]}`];
}

function weightPlace(tissue: string): [string, string] | undefined {
  const known = TISSUES.find((one) => one === tissue);
  return known && [`weight-${known}`, `Stress, ${TISSUE_WORDS[known].toLowerCase()}`];
}

function stepPlace(path: string, at: string, number: number): [string, string] | undefined {
  if (path.endsWith('.name')) return [`step-${at}-name`, `Name of step ${number}`];
  return path.endsWith('.pass.target') ? [`step-${at}-target`, `Target of step ${number}`] : undefined;
}
