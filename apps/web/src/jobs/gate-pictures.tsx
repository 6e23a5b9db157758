/** Small plans for the questions of a new job: seen from above, the ram's side at the foot. */
export function HingePicture({ side }: { readonly side: "left" | "right" }) {
  return (
    <svg width="150" height="80" viewBox="0 0 150 80" aria-hidden="true">
      <g transform={side === "left" ? undefined : "translate(150 0) scale(-1 1)"}>
        <Posts />
        <rect className="leaf-body" x="34" y="27" width="88" height="6" />
        <circle className="line-thick" cx="32" cy="30" r="4" fill="none" />
        <Ram from={[22, 44]} to={[74, 40]} />
      </g>
      <Person x={75} y={66} />
    </svg>
  );
}

export function SwingPicture({ swing }: { readonly swing: "toward" | "away" }) {
  const sign = swing === "toward" ? 1 : -1;
  return (
    <svg width="150" height="150" viewBox="0 -50 150 150" aria-hidden="true">
      <Posts />
      <rect className="ghost" x="34" y="27" width="88" height="6" />
      <g transform={`rotate(${38 * sign} 32 30)`}>
        <rect className="leaf-body" x="34" y="27" width="88" height="6" />
      </g>
      <path
        className="sweep"
        d={`M122 30 A90 90 0 0 ${sign === 1 ? 1 : 0} ${32 + 90 * 0.6} ${30 + sign * 72}`}
      />
      <circle className="line-thick" cx="32" cy="30" r="4" fill="none" />
      <Person x={75} y={88} />
    </svg>
  );
}

const Posts = () => (
  <>
    <rect className="line-thick" x="8" y="16" width="20" height="20" fill="none" />
    <rect className="line-thick" x="126" y="16" width="16" height="20" fill="none" />
  </>
);

const Ram = ({ from, to }: { readonly from: [number, number]; readonly to: [number, number] }) => (
  <line x1={from[0]} y1={from[1]} x2={to[0]} y2={to[1]} className="ram-line" />
);

/** Where the reader stands: head and shoulders from above. */
const Person = ({ x, y }: { readonly x: number; readonly y: number }) => (
  <g transform={`translate(${x} ${y})`}>
    <ellipse className="line-thin" rx="11" ry="5" fill="none" />
    <circle className="solid-ink" r="4" />
  </g>
);
