import type { CameraPlan } from '#lib/views/film/camera-plan.ts';

/** Seen from above and from beside: who trains, the camera, how far and how high. The words beside it say the same. */
export function CameraDrawing({ plan }: { plan: CameraPlan }) {
  return (
    <svg
      viewBox="0 0 320 132"
      width="320"
      height="132"
      role="img"
      aria-label={plan.words}
      className="camera-drawing"
    >
      <g fill="none" stroke="currentColor" strokeWidth="2" strokeLinecap="round">
        <FromAbove from={plan.from} />
        <FromBeside metres={plan.height.metres} />
        <path d="M160 8v116" strokeWidth="1" strokeDasharray="2 5" />
      </g>
      <g fill="currentColor" fontSize="13" stroke="none">
        <text x="8" y="16">
          from above
        </text>
        <text x="170" y="16">
          from beside
        </text>
        <text x="8" y="126">
          {plan.metres === 3 ? '3 m away' : '1.5 m away'}
        </text>
        <text x="312" y="126" textAnchor="end">
          {plan.height.words}
        </text>
      </g>
    </svg>
  );
}

const MIDDLE = { x: 80, y: 66 };
const TURN = { side: 0, front: -90, behind: 90 } as const;

/** Two hands and a nose that points up the page; the camera and what it sees are turned around them. */
function FromAbove({ from }: Pick<CameraPlan, 'from'>) {
  const reach = from === 'side' ? 56 : 40;
  return (
    <g transform={`translate(${MIDDLE.x} ${MIDDLE.y})`}>
      <path d="M-9 -4v8M9 -4v8" strokeWidth="5" />
      <circle r="5" cy="2" />
      <path d="M0 -6v-8m-4 4 4 -4 4 4" />
      <g transform={`rotate(${TURN[from]})`}>
        <path d={`M${reach} 0L16 -16M${reach} 0L16 16`} strokeWidth="1" strokeDasharray="4 4" />
        <rect x={reach} y="-7" width="6" height="14" fill="currentColor" />
      </g>
    </g>
  );
}

/** Somebody upright over the floor line, and the camera at its height. */
function FromBeside({ metres }: { metres: number }) {
  const floor = 106;
  const y = floor - metres * 44;
  return (
    <g>
      <path d={`M168 ${floor}h146`} />
      <path d={`M200 ${floor}v-24m0 0v-26m0 0v-26M192 ${floor}h16`} />
      <circle cx="200" cy={floor - 12} r="5" />
      <path d={`M280 ${floor}v${y - floor}`} strokeWidth="1" strokeDasharray="4 4" />
      <rect x="274" y={y - 7} width="12" height="8" fill="currentColor" />
      <path
        d={`M274 ${y - 3}L208 ${floor - 70}M274 ${y - 3}L208 ${floor - 4}`}
        strokeWidth="1"
        strokeDasharray="4 4"
      />
    </g>
  );
}
