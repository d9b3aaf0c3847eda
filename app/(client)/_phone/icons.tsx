/** Own line drawings. All are decoration: the words beside them say the same. */
type Size = { size?: number };

export function Bob({ size = 22 }: Size) {
  return (
    <svg className="bob" width={size / 2} height={size} viewBox="0 0 11 22" aria-hidden="true">
      <path
        d="M3.5 0h4v3h-4zM1.5 4h8v2h-8zM1.5 7h8v3.5L6.6 17h-2.2L1.5 10.5zM4.6 18h1.8L5.5 22z"
        fill="currentColor"
      />
    </svg>
  );
}

/** The tile of "now": the bob knocked out of a square. */
export function NowTile() {
  return (
    <svg width="22" height="22" viewBox="0 0 22 22" aria-hidden="true">
      <path
        fill="currentColor"
        fillRule="evenodd"
        d="M0 0h22v22H0zM10.3 0v4.5H8V7h6V4.5h-2.3V0zM7 8.2l3 10.3h2L15 8.2z"
      />
    </svg>
  );
}

export function Tick({ size = 18 }: Size) {
  return (
    <svg width={size} height={size} viewBox="0 0 18 18" aria-hidden="true">
      <path d="M2 9.5l4.5 5L16 3.5" fill="none" stroke="currentColor" strokeWidth="2.2" />
    </svg>
  );
}

export function Minus() {
  return (
    <svg width="22" height="22" viewBox="0 0 22 22" aria-hidden="true">
      <path d="M2 11h18" stroke="currentColor" strokeWidth="2.2" />
    </svg>
  );
}

export function Plus() {
  return (
    <svg width="22" height="22" viewBox="0 0 22 22" aria-hidden="true">
      <path d="M2 11h18M11 2v18" stroke="currentColor" strokeWidth="2.2" />
    </svg>
  );
}

export function Back() {
  return (
    <svg width="14" height="22" viewBox="0 0 14 22" aria-hidden="true">
      <path d="M12 2L3 11l9 9" fill="none" stroke="currentColor" strokeWidth="2.4" />
    </svg>
  );
}
