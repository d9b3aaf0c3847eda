'use client';

type Props = {
  /** What is asked, for screen readers. */
  name: string;
  value: number | null;
  /** Words of some of the numbers, for screen readers; `under`: those shown below their cell, all when left out. */
  words: Partial<Record<number, string>>;
  under?: readonly number[];
  onChange: (value: number | null) => void;
};

const NUMBERS = [0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10];

/** Eleven cells, 0-10, in rows of six and five. Nothing is chosen beforehand; a second tap takes the answer back. */
export function Tenths({ name, value, words, under = NUMBERS, onChange }: Props) {
  return (
    <fieldset className="cells cells-6" aria-label={`${name}, 0 to 10`}>
      {NUMBERS.map((number) => (
        <div key={number} className="cell-step">
          <button
            type="button"
            className="cell"
            aria-pressed={value === number}
            aria-label={words[number] ? `${number}, ${words[number]}` : String(number)}
            onClick={() => onChange(value === number ? null : number)}
          >
            {number}
          </button>
          <small aria-hidden="true">{under.includes(number) ? (words[number] ?? '') : ''}</small>
        </div>
      ))}
    </fieldset>
  );
}
