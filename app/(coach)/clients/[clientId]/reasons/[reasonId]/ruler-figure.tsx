import type { Ruler } from '#lib/views/working/ruler.ts';
import styles from './ruler.module.css';

const PERCENT = 100;
/** From here on a label would run out of the figure: it stands left of its mark. */
const LATE = 62;

/** Every threshold standing on its scale, and tonight's number as a pointer. Said in one sentence to whoever listens. */
export function RulerFigure({ ruler }: { ruler: Ruler }) {
  const place = (at: number) => `${(Math.min(at, ruler.end) / ruler.end) * PERCENT}%`;
  const isLate = (at: number) => (at / ruler.end) * PERCENT > LATE;
  const said = `${ruler.value.said}; ${ruler.marks.map((mark) => `${mark.words} ${mark.said}`).join(', ')}.`;
  return (
    <figure className={styles.ruler} role="img" aria-label={said}>
      <div className={styles.above} style={{ height: 30 + 20 * ruler.marks.length }}>
        {ruler.marks.map((mark, index) => (
          <span
            key={mark.words}
            className={styles.mark}
            data-late={isLate(mark.at) || undefined}
            style={{ left: place(mark.at), top: 26 + 20 * index }}
          >
            <span>
              <b>{mark.said}</b> <i>{mark.words}</i>
            </span>
          </span>
        ))}
        <span
          className={styles.pointer}
          data-late={isLate(ruler.value.at) || undefined}
          style={{ left: place(ruler.value.at) }}
        >
          {ruler.value.said}
        </span>
      </div>
      <div className={styles.scale}>
        {ruler.ticks.map((tick) => (
          <span key={tick} style={{ left: place(tick) }}>
            {tick}
          </span>
        ))}
      </div>
      <ul className={styles.list} aria-hidden="true">
        {ruler.marks.map((mark) => (
          <li key={mark.words}>
            <b>{mark.said}</b> {mark.words}
          </li>
        ))}
      </ul>
    </figure>
  );
}
