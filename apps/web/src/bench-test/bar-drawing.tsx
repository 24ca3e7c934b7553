/** What is measured where on the bar: drawn, with its letters said in words. */
interface BarDrawingProps {
  readonly shape: 'flat' | 'round';
}

export function BarDrawing({ shape }: BarDrawingProps) {
  return (
    <svg
      viewBox="0 0 420 118"
      className="bench-drawing"
      role="img"
      aria-label="A bar on two supports, a weight hung from its middle; the span lies between the supports, the sag is read in the middle"
    >
      <g fill="none" stroke="var(--ink)" strokeWidth="1.75">
        <path d="M20 34Q170 54 320 34M20 46Q170 66 320 46M20 34V46M320 34V46" />
        <path d="M50 58l-9 16h18zM290 58l-9 16h18z" />
        <path d="M170 56V78M156 78H184V96H156Z" />
        {shape === 'round' ? <circle cx="384" cy="46" r="16" /> : <path d="M362 36H406V56H362Z" />}
      </g>
      <g stroke="var(--ink2)" fill="none">
        <path d="M50 14V40M290 14V40M52 18H140M200 18H288" />
        <path d="M20 40H320" strokeDasharray="2 4" />
      </g>
      <g fill="var(--ink2)" className="bench-words">
        <text x="170" y="22" textAnchor="middle">
          span
        </text>
        <text x="170" y="112" textAnchor="middle">
          weight
        </text>
        <text x="230" y="68">
          sag
        </text>
        <text x="384" y="84" textAnchor="middle">
          {shape === 'round' ? 'diameter' : 'width, height'}
        </text>
      </g>
    </svg>
  );
}
