'use client';

import type { Measure } from '#lib/domain/vocabulary.ts';
import { TARGET_UNITS } from '#lib/views/ladders/words.ts';
import forms from '../../clients/_parts/forms.module.css';
import styles from './split.module.css';

export type StepRow = {
  name: string;
  target: string;
  weight: number | null;
  shape?: string;
  moment?: string;
  part?: string;
  rise?: string;
};
type Props = {
  rows: StepRow[];
  start: { shape: string; moment: string; part: string } | null;
  measure: Measure;
  error: (index: number, name: string) => string | undefined;
  onType: (index: number, patch: { name?: string; target?: string }) => void;
};

/** The proposed steps, easiest first; the last line is the rung itself. */
export function SplitSteps({ rows, start, measure, error, onType }: Props) {
  const last = rows.length - 1;
  return (
    <table className={styles.steps}>
      <caption className="heard-only">Proposed steps, easiest first</caption>
      <thead>
        <tr>
          <th scope="col">Step</th>
          <th scope="col">Name</th>
          <th scope="col">Target, {TARGET_UNITS[measure]}</th>
          {start ? (
            <>
              <th scope="col">Hip</th>
              <th scope="col">Shoulder moment</th>
              <th scope="col">Of the full position</th>
              <th scope="col">Added</th>
            </>
          ) : null}
        </tr>
      </thead>
      <tbody>
        {start ? (
          <tr className={styles.start}>
            <th scope="row">from</th>
            <td colSpan={2}>the rung below</td>
            <Load {...start} rise="" />
          </tr>
        ) : null}
        {rows.map((row, index) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a step is its place
          <tr key={index}>
            <th scope="row">{index + 1}</th>
            <td>
              {index === last ? (
                <span>
                  {row.name} <small>this rung, as it is</small>
                </span>
              ) : (
                <input
                  id={`step-${index}-name`}
                  aria-label={`Name of step ${index + 1}`}
                  aria-invalid={error(index, 'name') !== undefined}
                  value={row.name}
                  onChange={(event) => onType(index, { name: event.target.value })}
                />
              )}
              <Wrong words={error(index, 'name')} />
            </td>
            <td>
              {index === last ? (
                row.target
              ) : (
                <input
                  id={`step-${index}-target`}
                  className={forms.short}
                  inputMode="decimal"
                  aria-label={`Target of step ${index + 1}, ${TARGET_UNITS[measure]}`}
                  aria-invalid={error(index, 'pass.target') !== undefined}
                  value={row.target}
                  onChange={(event) => onType(index, { target: event.target.value })}
                />
              )}
              <Wrong words={error(index, 'pass.target')} />
            </td>
            {start ? (
              <Load
                shape={row.shape ?? ''}
                moment={row.moment ?? ''}
                part={row.part ?? ''}
                rise={row.rise ?? ''}
              />
            ) : null}
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function Load(props: { shape: string; moment: string; part: string; rise: string }) {
  return (
    <>
      <td data-label="hip">{props.shape}</td>
      <td data-label="shoulder moment">{props.moment}</td>
      <td data-label="of the full position">{props.part}</td>
      <td data-label="added">{props.rise}</td>
    </>
  );
}

function Wrong({ words }: { words: string | undefined }) {
  return words ? <p className={forms.error}>{words}</p> : null;
}
