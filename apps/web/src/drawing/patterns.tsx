/** Hatching and stipple, in the strength of a pencil. Ids are shared by every drawing on the page. */
export function Patterns() {
  return (
    <svg width="0" height="0" aria-hidden="true" className="drawing-patterns">
      <defs>
        <pattern id="hatch-keepout" width="9" height="9" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <line x1="0" y1="0" x2="0" y2="9" stroke="var(--ink2)" strokeWidth="1" />
        </pattern>
        <pattern id="hatch-fails" width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <line x1="0" y1="0" x2="0" y2="6" stroke="var(--brick)" strokeWidth="0.8" opacity="0.6" />
        </pattern>
        <pattern id="dots-watch" width="5" height="5" patternUnits="userSpaceOnUse">
          <circle cx="1.2" cy="1.2" r="0.75" fill="var(--ochre)" opacity="0.75" />
          <circle cx="3.7" cy="3.7" r="0.75" fill="var(--ochre)" opacity="0.75" />
        </pattern>
        <pattern id="stipple-column" width="11" height="11" patternUnits="userSpaceOnUse">
          <g fill="var(--ink2)">
            <circle cx="2" cy="2.5" r="0.7" />
            <circle cx="7.4" cy="1.4" r="0.6" />
            <circle cx="4.8" cy="6.2" r="0.7" />
            <circle cx="9.6" cy="7.3" r="0.6" />
            <circle cx="1.6" cy="9.4" r="0.6" />
          </g>
        </pattern>
        <pattern id="stipple-bone" width="7" height="7" patternUnits="userSpaceOnUse">
          <g fill="var(--ink2)">
            <circle cx="1.5" cy="1.8" r="0.55" />
            <circle cx="4.9" cy="3.6" r="0.55" />
            <circle cx="2.4" cy="5.6" r="0.55" />
          </g>
        </pattern>
      </defs>
    </svg>
  );
}
