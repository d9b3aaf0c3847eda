import { notFound } from 'next/navigation';
import { receiptAddress } from '#lib/schemas/rights.ts';
import { loadReceipt } from '#lib/usecases/rights/load-receipt.ts';
import { receiptLines } from '#lib/views/rights/receipt.ts';
import styles from '../../account.module.css';

export const metadata = { title: 'Receipt', robots: { index: false } };

/** For whoever holds the number: what became of a wish to be forgotten. It names nobody. */
export default async function ReceiptPage({ params }: { params: Promise<unknown> }) {
  const address = receiptAddress.safeParse(await params);
  const found = address.success ? await loadReceipt(address.data.receipt) : undefined;
  if (!address.success || !found) notFound();
  const { receipt } = address.data;
  return (
    <main className={styles.page}>
      <h1>Receipt</h1>
      <p>
        Number <b>{receipt}</b>
      </p>
      {receiptLines(found).map((line) => (
        <p key={line}>{line}</p>
      ))}
      <p>
        <a href={`/api/receipts/${receipt}`} download>
          Keep it as a text
        </a>
      </p>
    </main>
  );
}
