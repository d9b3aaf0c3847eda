'use client';

import { TISSUES, type Tissue } from '#lib/domain/vocabulary.ts';
import { TISSUE_WORDS } from '#lib/views/tissue-words.ts';
import forms from '../../clients/_parts/forms.module.css';
import styles from './rung.module.css';
import type { RungPartProps, SwapChoice, SwapOfForm } from './rung-parts.ts';
import { SwapLine } from './swap-line.tsx';

type Props = RungPartProps & { rungs: SwapChoice[] };

/** What to do instead while a tissue is sore: the team's own list for each tissue, first choice first. */
export function SwapFields({ form, error, onChange, rungs }: Props) {
  const swaps = form.swaps.map((swap, at) => ({ ...swap, at }));
  const change = (at: number, patch: Partial<SwapOfForm>) =>
    onChange({ swaps: form.swaps.map((swap, index) => (index === at ? { ...swap, ...patch } : swap)) });
  const first = (at: number, tissue: Tissue) => {
    const [chosen] = form.swaps.slice(at, at + 1);
    const others = form.swaps.toSpliced(at, 1);
    const place = others.findIndex((swap) => swap.tissue === tissue);
    if (chosen) onChange({ swaps: others.toSpliced(Math.max(place, 0), 0, chosen) });
  };
  return (
    <section aria-labelledby="swaps" className={styles.section}>
      <h2 id="swaps">Swaps</h2>
      <div className={styles.fields}>
        <p className={forms.hint}>
          What the phone and the plan offer instead while a limit spares a tissue, first choice first. Behind
          each rung stands its own weight on that tissue. They follow the weights, kit and order of the
          ladders by themselves: the same part, at most half of the weight. What you add, take away or put
          first stays as you leave it.
        </p>
        {error('swaps') ? <p className={forms.error}>{error('swaps')}</p> : null}
        <div>
          {TISSUES.map((tissue) => {
            const lines = swaps.filter((swap) => swap.tissue === tissue);
            const loaded = Number(form.weights[tissue].replace(',', '.')) > 0;
            if (!loaded && lines.length === 0) return null;
            const wrong = lines.some((line) => error(`swaps.${line.at}.insteadId`) !== undefined);
            return (
              <details key={tissue} className={styles.swaps} open={wrong || undefined}>
                <summary>
                  {TISSUE_WORDS[tissue]}: {counted(lines.length)}
                </summary>
                {lines.map((line, place) => (
                  <SwapLine
                    key={line.at}
                    swap={line}
                    rungs={rungs}
                    most={Number(form.weights[tissue].replace(',', '.')) / 2}
                    error={error(`swaps.${line.at}.insteadId`)}
                    onChange={(patch) => change(line.at, patch)}
                    onFirst={place === 0 ? undefined : () => first(line.at, tissue)}
                    onRemove={() => onChange({ swaps: form.swaps.toSpliced(line.at, 1) })}
                  />
                ))}
                <button
                  type="button"
                  className={forms.plain}
                  onClick={() =>
                    onChange({ swaps: [...form.swaps, { insteadId: '', tissue, support: null, why: '' }] })
                  }
                >
                  Add a swap<span className="heard-only"> for {TISSUE_WORDS[tissue]}</span>
                </button>
              </details>
            );
          })}
        </div>
      </div>
    </section>
  );
}

function counted(count: number): string {
  if (count === 0) return 'no swap';
  return count === 1 ? '1 swap' : `${count} swaps`;
}
