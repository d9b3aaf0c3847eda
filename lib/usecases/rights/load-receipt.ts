import { env } from '#lib/config/env.ts';
import { findReceipt, type ReceiptRow } from '#lib/db/erasures.ts';
import { receiptText } from '#lib/views/rights/receipt.ts';

/** What a receipt says; undefined: there is none of that number. */
export function loadReceipt(receipt: string): Promise<ReceiptRow | undefined> {
  return findReceipt(receipt);
}

/** The same as a text to keep. */
export async function writeReceipt(receipt: string): Promise<string | undefined> {
  const found = await findReceipt(receipt);
  return found && receiptText(receipt, found, `${env().PLUMBLINE_ORIGIN}/receipt/${receipt}`);
}
