type Bar = { label: string; value: number };
type Props = { left: Bar; right: Bar; unit: string };

/** Two amounts on either side of the line, drawn to the same measure. The words over them say the same. */
export function TwoBars({ left, right, unit }: Props) {
  const most = Math.max(left.value, right.value, 1e-9);
  const amount = ({ label, value }: Bar) =>
    `${label} ${Math.round(value * 10) / 10}${unit ? ` ${unit}` : ''}`;
  return (
    <div className="two-bars">
      <div>{amount(left)}</div>
      <div>{amount(right)}</div>
      <span className="two-bars-left" aria-hidden="true">
        <span style={{ width: `${(left.value / most) * 100}%` }} />
      </span>
      <span className="two-bars-right" aria-hidden="true">
        <span style={{ width: `${(right.value / most) * 100}%` }} />
      </span>
    </div>
  );
}
