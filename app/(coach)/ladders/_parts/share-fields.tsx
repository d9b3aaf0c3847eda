'use client';

import { useState } from 'react';
import { ChoiceField } from './choice-field.tsx';
import styles from './rung.module.css';
import type { RungPartProps } from './rung-parts.ts';
import { TextField } from './text-field.tsx';

const OWN_WORDS = 'own-words';

/** How much of the body the hands carry, and who says so. */
export function ShareFields({
  form,
  error,
  onChange,
  sources,
}: RungPartProps & { sources: Record<string, string> }) {
  const [ownWords, setOwnWords] = useState(form.shareSource !== '' && !(form.shareSource in sources));
  const oneSide = form.per === 'each';
  return (
    <div className={styles.share}>
      <TextField
        id="drill-share"
        kind="number"
        label={oneSide ? 'Working hand, % of body weight' : 'Hands, % of body weight'}
        error={error('drill.share')}
        value={form.share}
        onChange={(share) => onChange({ share, ...(share === '' ? { shareSource: '' } : {}) })}
      />
      {oneSide ? (
        <TextField
          id="drill-helping-share"
          kind="number"
          label="Helping hand, %"
          error={error('drill.helpingShare')}
          value={form.helpingShare}
          onChange={(helpingShare) => onChange({ helpingShare })}
        />
      ) : null}
      <ChoiceField
        id="drill-share-source"
        label="Where that number comes from"
        error={ownWords ? undefined : error('drill.shareSource')}
        value={ownWords ? OWN_WORDS : form.shareSource}
        options={[
          { value: '', label: 'no number' },
          ...Object.entries(sources).map(([value, label]) => ({ value, label })),
          { value: OWN_WORDS, label: 'another source, in words' },
        ]}
        onChange={(source) => {
          setOwnWords(source === OWN_WORDS);
          onChange({ shareSource: source === OWN_WORDS ? '' : source });
        }}
      />
      {ownWords ? (
        <TextField
          id="drill-share-words"
          label="The source in words"
          error={error('drill.shareSource')}
          value={form.shareSource}
          onChange={(shareSource) => onChange({ shareSource })}
        />
      ) : null}
    </div>
  );
}
