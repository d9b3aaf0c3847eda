type Ladder = { name: string; rungs: readonly { id: string; label: string }[] };

/** Rungs to choose one from, under the names of their ladders. */
export function RungOptions({ ladders }: { ladders: readonly Ladder[] }) {
  return ladders.map(({ name, rungs }) => (
    <optgroup key={`${name} ${rungs[0]?.id}`} label={name}>
      {rungs.map((rung) => (
        <option key={rung.id} value={rung.id}>
          {rung.label}
        </option>
      ))}
    </optgroup>
  ));
}
