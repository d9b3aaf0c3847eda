const KEPT = 'plumbline-morning';

export type InOrder = { id: string; name: string };

/** The order of the board, for the pages of clients that are opened from it; in this tab only. */
export function keepMorning(order: InOrder[]): void {
  sessionStorage.setItem(KEPT, JSON.stringify(order));
}

/** Who follows a client on the board that was opened last; undefined where nobody does. */
export function nextOnBoard(clientId: string): InOrder | undefined {
  try {
    const order: InOrder[] = JSON.parse(sessionStorage.getItem(KEPT) ?? '[]');
    const at = order.findIndex((one) => one.id === clientId);
    return at < 0 ? undefined : order[at + 1];
  } catch {
    return undefined;
  }
}
