import Link from 'next/link';
import { Mark } from '#app/_ui/marks.tsx';
import type { Tier } from '#lib/domain/vocabulary.ts';
import type { WorkingView } from '#lib/views/working/working.ts';
import { Said } from '../../_page/said.tsx';
import { RulerFigure } from './ruler-figure.tsx';
import styles from './working.module.css';

/** Left of the line: the sentence, the ruler, every number that went in, and what decided. */
export function WorkingSum({
  view,
  tier,
  sentence,
}: {
  view: WorkingView;
  tier: Tier | null;
  sentence: string;
}) {
  return (
    <section className={styles.left} aria-labelledby="kind">
      <h2 id="kind">
        {tier ? <Mark tier={tier} /> : null} {view.title}
      </h2>
      <p className={styles.since}>{view.since}</p>
      <p className={styles.sentence}>
        <Said text={sentence} />
      </p>
      {view.ruler ? <RulerFigure ruler={view.ruler} /> : null}
      <table className={styles.sum}>
        <caption>What it is computed from</caption>
        <thead>
          <tr>
            <th scope="col">What</th>
            <th scope="col">Number</th>
          </tr>
        </thead>
        <tbody>
          {view.inputs.map((input) => (
            <tr key={input.name}>
              <th scope="row">{input.name}</th>
              <td>{input.said}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <h3>How</h3>
      <p className={styles.formula}>{view.formula}</p>
      <table className={styles.sum}>
        <caption>Thresholds that decided</caption>
        <thead>
          <tr>
            <th scope="col">What</th>
            <th scope="col">Number</th>
            <th scope="col">Where it comes from</th>
          </tr>
        </thead>
        <tbody>
          {view.thresholds.map((one) => (
            <tr key={one.id}>
              <th scope="row">{one.meaning}</th>
              <td>{one.said}</td>
              <td>{one.source}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <p className={styles.answer}>{view.days}</p>
      <p className={styles.since}>
        {view.under} <Link href="/checks">Every number of the checks</Link>
      </p>
    </section>
  );
}
