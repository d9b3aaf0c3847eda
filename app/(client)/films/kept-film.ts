/** A film that was chosen and is not sent whole, on this phone. The id is its upload's, so that nothing is begun twice. */
export type KeptFilm = {
  id: string;
  clientId: string;
  title: string;
  about: Record<string, string>;
  file: Blob;
};

const NAME = 'plumbline-films';
const STORE = 'films';

/** False: this browser keeps no files, and the page has to stay open. */
export async function keepFilm(film: KeptFilm): Promise<boolean> {
  return run('readwrite', (store) => store.put(film)).then(
    () => true,
    () => false,
  );
}

export async function keptFilms(clientId: string): Promise<KeptFilm[]> {
  const all = await run<KeptFilm[]>('readonly', (store) => store.getAll()).catch(() => []);
  return all.filter((film) => film.clientId === clientId);
}

export async function forgetFilm(id: string): Promise<void> {
  await run('readwrite', (store) => store.delete(id)).catch(() => undefined);
}

async function run<T>(mode: IDBTransactionMode, work: (store: IDBObjectStore) => IDBRequest<T>): Promise<T> {
  const db = await open();
  try {
    const transaction = db.transaction(STORE, mode);
    const asked = work(transaction.objectStore(STORE));
    await new Promise<void>((done, fail) => {
      transaction.oncomplete = () => done();
      transaction.onabort = () => fail(transaction.error);
      transaction.onerror = () => fail(transaction.error);
    });
    return asked.result;
  } finally {
    db.close();
  }
}

function open(): Promise<IDBDatabase> {
  return new Promise((done, fail) => {
    const asked = indexedDB.open(NAME, 1);
    asked.onupgradeneeded = () => asked.result.createObjectStore(STORE, { keyPath: 'id' });
    asked.onsuccess = () => done(asked.result);
    asked.onerror = () => fail(asked.error);
  });
}
