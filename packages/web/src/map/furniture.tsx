import { M_PER_FT, type UnitSystem } from "@causey/engine/units";

export function NorthArrow() {
  return (
    <svg
      className="north-arrow"
      width="34"
      height="62"
      viewBox="-17 -38 34 62"
      role="img"
      aria-label="Grid north is up"
    >
      <path className="north-dark" d="M0-36L9 8 0 1Z" />
      <path className="north-light" d="M0-36L-9 8 0 1Z" />
      <text textAnchor="middle" y="22" aria-hidden="true">
        N
      </text>
    </svg>
  );
}

const round = [0.5, 1, 2, 5, 10, 20, 50, 100, 200, 500, 1000, 2000, 5000];
const LONGEST_PX = 190;

interface ScaleProps {
  readonly scale: number;
  readonly units: UnitSystem;
}

/** A bar of a round length in the chosen unit, in two halves. */
export function ScaleBar({ scale, units }: ScaleProps) {
  const unit = units === "us" ? M_PER_FT : 1;
  const length = round.findLast((r) => r * unit * scale <= LONGEST_PX) ?? round[0]!;
  const px = length * unit * scale;
  const word = units === "us" ? "ft" : "m";
  return (
    <svg
      className="scale-bar"
      width={LONGEST_PX + 60}
      height="34"
      viewBox={`-8 -10 ${LONGEST_PX + 60} 34`}
      role="img"
      aria-label={`Scale bar: ${length} ${word}`}
    >
      <rect className="scale-dark" x="0" y="-3" width={px / 2} height="5" />
      <rect className="scale-light" x={px / 2} y="-3" width={px / 2} height="5" />
      <g aria-hidden="true">
        <text x="0" y="18" textAnchor="middle">
          0
        </text>
        <text x={px / 2} y="18" textAnchor="middle">
          {length / 2}
        </text>
        <text x={px} y="18" textAnchor="middle">
          {length}
        </text>
        <text x={px + 4 + String(length).length * 3.6} y="18">
          {word}
        </text>
      </g>
    </svg>
  );
}
