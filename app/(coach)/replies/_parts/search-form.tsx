import styles from './replies.module.css';

/** The search lives in the address; it needs no script. */
export function SearchForm({ find, mine }: { find: string | undefined; mine: boolean }) {
  return (
    <search>
      <form action="/replies#earlier" method="get" className={styles.find}>
        {mine && <input type="hidden" name="coach" value="mine" />}
        <div>
          <label htmlFor="find">Words of the question or the answer, in any of their forms</label>
          <input
            id="find"
            name="find"
            type="search"
            defaultValue={find ?? ''}
            maxLength={300}
            autoComplete="off"
            data-find
          />
        </div>
        <button type="submit" data-outlined>
          Find
        </button>
      </form>
    </search>
  );
}
