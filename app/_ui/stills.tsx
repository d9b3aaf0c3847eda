type Props = {
  ids: readonly string[];
  className?: string | undefined;
  /** For coaches: a way to the page where joints are placed. */
  place?: boolean;
};

/** Stills of a question, each to be opened whole. */
export function Stills({ ids, className, place = false }: Props) {
  if (ids.length === 0) return null;
  return (
    <span className={className} style={{ display: 'flex', flexWrap: 'wrap', gap: 8, margin: '8px 0' }}>
      {ids.map((id, at) => (
        <span key={id} style={{ display: 'grid', gap: 4, justifyItems: 'start' }}>
          <a href={`/api/stills/${id}`} target="_blank" rel="noopener">
            {/* biome-ignore lint/performance/noImgElement: an authorised picture, which no optimizer may keep */}
            <img
              src={`/api/stills/${id}`}
              alt={`Still ${at + 1} of ${ids.length} with the question, opens whole`}
              loading="lazy"
              style={{ display: 'block', height: 132, width: 'auto', maxWidth: '100%', objectFit: 'contain' }}
            />
          </a>
          {place && (
            <a href={`/stills/${id}`} style={{ minHeight: 24 }}>
              Place the joints{ids.length > 1 ? ` of ${at + 1}` : ''}
            </a>
          )}
        </span>
      ))}
    </span>
  );
}
