/** Hatchings of the zones, kept at one size on the screen whatever the map's scale. Ids are shared with the legend. */
export function ZonePatterns({ prefix, scale }: { readonly prefix: string; readonly scale: number }) {
  const still = `scale(${1 / scale} ${-1 / scale})`;
  return (
    <defs>
      <pattern
        id={`${prefix}-habitat`}
        width="16"
        height="16"
        patternUnits="userSpaceOnUse"
        patternTransform={still}
      >
        <path
          className="pat-sedge"
          d="M3 8q.6-4 0-6M3 8q2.400-3 3.200-4.600M11 16q.6-4 0-6M11 16q2.400-3 3.200-4.600"
        />
      </pattern>
      <pattern
        id={`${prefix}-closed`}
        width="8"
        height="8"
        patternUnits="userSpaceOnUse"
        patternTransform={`${still} rotate(45)`}
      >
        <path className="pat-clay" d="M0 0V8" />
      </pattern>
      <pattern
        id={`${prefix}-seasonal-closure`}
        width="12"
        height="12"
        patternUnits="userSpaceOnUse"
        patternTransform={`${still} rotate(45)`}
      >
        <path className="pat-clay" d="M0 0V7" />
      </pattern>
      <pattern
        id={`${prefix}-buffer`}
        width="16"
        height="16"
        patternUnits="userSpaceOnUse"
        patternTransform={`${still} rotate(-45)`}
      >
        <path className="pat-clay pat-thin" d="M0 0V16" />
      </pattern>
      <pattern
        id={`${prefix}-soft-ground`}
        width="10"
        height="10"
        patternUnits="userSpaceOnUse"
        patternTransform={still}
      >
        <circle className="pat-straw" cx="2.500" cy="2.500" r="0.9" />
        <circle className="pat-straw" cx="7.500" cy="7.500" r="0.9" />
      </pattern>
    </defs>
  );
}
