import type { BarsBlock, Block, TableBlock } from '#lib/handover/report/blocks.ts';
import styles from './handover.module.css';

/** The first page as it would be printed, in the order of the report. */
export function ReportBlocks({ blocks }: { blocks: readonly Block[] }) {
  return keyed(blocks).map(({ key, item }) => <OneBlock key={key} block={item} />);
}

function OneBlock({ block }: { block: Block }) {
  switch (block.kind) {
    case 'heading':
      return block.level === 1 ? <h2 className={styles.title}>{block.text}</h2> : <h3>{block.text}</h3>;
    case 'text':
      return (
        <p data-tone={block.tone} dir="auto">
          {block.text}
        </p>
      );
    case 'list':
      return (
        <ul>
          {block.items.map((item) => (
            <li key={item} dir="auto">
              {item}
            </li>
          ))}
        </ul>
      );
    case 'facts':
      return (
        <dl>
          {block.facts.map((fact) => (
            <div key={fact.name}>
              <dt>{fact.name}</dt>
              <dd dir="auto">{fact.text}</dd>
            </div>
          ))}
        </dl>
      );
    case 'table':
      return <OneTable block={block} />;
    case 'bars':
      return <Bars block={block} />;
    case 'caution':
      return (
        <div className={styles.caution}>
          {block.lines.map((line) => (
            <p key={line}>{line}</p>
          ))}
        </div>
      );
    default:
      return null;
  }
}

function OneTable({ block }: { block: TableBlock }) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a table wider than the screen has to be moved by keyboard
    <section className={styles.scroll} tabIndex={0} aria-label={block.caption}>
      <table>
        <caption>{block.caption}</caption>
        <thead>
          <tr>
            {keyed(block.columns).map(({ key, item }) => (
              <th key={key} scope="col" data-numeric={item.numeric}>
                {item.name}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {keyed(block.rows).map((row) => (
            <tr key={row.key}>
              {keyed(row.item).map(({ key, item }) => (
                <td key={key} data-numeric={block.columns[Number(key)]?.numeric}>
                  {item}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

const HIGH = 56;

function Bars({ block }: { block: BarsBlock }) {
  const top = Math.max(1, block.usual?.high ?? 0, ...block.bars.map((bar) => bar.value ?? 0));
  return (
    <figure>
      <figcaption>{block.caption}</figcaption>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: wider than a phone, moved by keyboard */}
      <section className={styles.scroll} tabIndex={0} aria-label={block.caption}>
        <div className={styles.bars} role="img" aria-label={block.alt}>
          {block.bars.map((bar) => (
            <span key={bar.label}>
              <span>{bar.value === null ? 'unknown' : `${bar.value}${bar.partly ? '+' : ''}`}</span>
              <i style={{ height: `${Math.round(((bar.value ?? 0) / top) * HIGH)}px` }} />
              <span>{bar.label}</span>
            </span>
          ))}
        </div>
      </section>
      {block.usual ? (
        <p data-tone="small">
          Usual week {block.usual.week} {block.unit}, band to {block.usual.high}.
        </p>
      ) : null}
    </figure>
  );
}

/** What has no name of its own and never changes places, by its place. */
function keyed<Item>(items: readonly Item[]): { key: string; item: Item }[] {
  return items.map((item, at) => ({ key: String(at), item }));
}
