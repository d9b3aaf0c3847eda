import { asSentence, PAIN_KIND_LABELS, REGION_LABELS } from '#lib/domain/labels.ts';
import { PAIN_KINDS, PAIN_REGIONS } from '#lib/domain/vocabulary.ts';

const SCORES = Array.from({ length: 11 }, (_, score) => score);
const SIDES = [
  ['left', 'Left'],
  ['right', 'Right'],
  ['middle', 'Middle'],
] as const;
const MOMENTS = [
  ['during', 'Worst while training'],
  ['after', 'Worst after'],
  ['today', 'Today, on a day without training'],
  ['morning', 'This morning, on a day without training'],
] as const;

/** Pain without leading: nothing is chosen before the client does. */
export function PlainPain() {
  return (
    <fieldset>
      <legend>Pain</legend>
      <label className="plain-tick">
        <input type="checkbox" name="nothingHurts" value="yes" /> Nothing hurts
      </label>
      <label>
        Where
        <select name="region" defaultValue="">
          <option value="">not told</option>
          {PAIN_REGIONS.map((region) => (
            <option key={region} value={region}>
              {asSentence(REGION_LABELS[region])}
            </option>
          ))}
        </select>
      </label>
      <label>
        Side
        <select name="painSide" defaultValue="">
          <option value="">not told</option>
          {SIDES.map(([value, label]) => (
            <option key={value} value={value}>
              {label}
            </option>
          ))}
        </select>
      </label>
      <label>
        What kind
        <select name="painKind" defaultValue="">
          <option value="">not told</option>
          {PAIN_KINDS.map((kind) => (
            <option key={kind} value={kind}>
              {asSentence(PAIN_KIND_LABELS[kind])}
            </option>
          ))}
        </select>
      </label>
      {MOMENTS.map(([moment, label]) => (
        <label key={moment}>
          {label}, 0 none to 10 worst
          <select name={`pain ${moment}`} defaultValue="">
            <option value="">not told</option>
            {SCORES.map((score) => (
              <option key={score} value={score}>
                {score}
              </option>
            ))}
          </select>
        </label>
      ))}
      <label>
        The usual, or new
        <select name="usual" defaultValue="">
          <option value="">not told</option>
          <option value="yes">The usual</option>
          <option value="no">New</option>
        </select>
      </label>
    </fieldset>
  );
}
