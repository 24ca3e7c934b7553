/** Outer width and canal along the bone, both views, with the standard deviation as a band. */
import type { JoinedBone } from '@bonewright/film';
import { scaleLinear } from 'd3-scale';
import { area, line } from 'd3-shape';
import { useSize } from '../../drawing/use-size.ts';

type Station = JoinedBone['stations'][number];
interface Point {
  readonly s: number;
  readonly mm: number;
  readonly sd: number;
}

const HEIGHT = 172;
const LEFT = 26;
const RIGHT = 52;
const TOP = 8;
const BOTTOM = 24;

export function WallsChart({ bone }: { readonly bone: JoinedBone }) {
  const [box, { width }] = useSize<HTMLDivElement>();
  return (
    <section className="walls" aria-labelledby="walls-title">
      <header className="side-head">
        <h3 id="walls-title">Walls along the bone</h3>
        <span className="quiet walls-key">
          mm
          <Key dash="" /> craniocaudal
          <Key dash="4 3" /> mediolateral
        </span>
      </header>
      <div ref={box}>{width > 0 && <Chart bone={bone} width={width} />}</div>
    </section>
  );
}

const Key = ({ dash }: { readonly dash: string }) => (
  <svg width="24" height="8" aria-hidden="true">
    <path d="M0 4H24" stroke="currentColor" strokeWidth="1.75" strokeDasharray={dash} />
  </svg>
);

function Chart({ bone, width }: { readonly bone: JoinedBone; readonly width: number }) {
  const length = bone.lengthMm.value ?? bone.stations.at(-1)?.sMm ?? 1;
  const widest = Math.max(1, ...bone.stations.map(({ outerMm }) => Math.max(...outerMm)));
  const x = scaleLinear([0, length], [LEFT, width - RIGHT]);
  const y = scaleLinear([0, widest], [HEIGHT - BOTTOM, TOP]).nice(5);
  const path = line<Point>()
    .x(({ s }) => x(s))
    .y(({ mm }) => y(mm));
  const band = area<Point>()
    .x(({ s }) => x(s))
    .y0(({ mm, sd }) => y(Math.max(0, mm - sd)))
    .y1(({ mm, sd }) => y(mm + sd));
  const series = ([0, 1] as const).flatMap((view) => [
    { view, wall: 'outer', points: pointsOf(bone.stations, ({ outerMm }) => outerMm[view]) },
    { view, wall: 'canal', points: pointsOf(bone.stations, ({ canalMm }) => canalMm?.[view] ?? null) },
  ]);
  const { fromMm, toMm } = bone.fracture;
  return (
    <svg width={width} height={HEIGHT} role="img" aria-label={described(bone)} className="walls-chart">
      {y.ticks(5).map((mm) => (
        <g key={mm}>
          <path d={`M${LEFT} ${y(mm)}H${width - RIGHT}`} className={mm === 0 ? 'walls-axis' : 'walls-grid'} />
          <text x={LEFT - 6} y={y(mm) + 4} textAnchor="end">
            {mm}
          </text>
        </g>
      ))}
      {x.ticks(6).map((mm) => (
        <text key={mm} x={x(mm)} y={HEIGHT - 6} textAnchor="middle">
          {mm}
        </text>
      ))}
      <rect
        x={x(fromMm)}
        width={Math.max(1, x(toMm) - x(fromMm))}
        y={TOP}
        height={HEIGHT - BOTTOM - TOP}
        className="walls-fracture-band"
      />
      <path d={`M${x((fromMm + toMm) / 2)} ${TOP}V${HEIGHT - BOTTOM}`} className="walls-fracture" />
      {series.map(({ view, wall, points }) => (
        <g key={`${view}${wall}`} className={`walls-${wall}`}>
          <path d={band(points) ?? ''} className="walls-band" />
          <path d={path(points) ?? ''} className="walls-line" strokeDasharray={view === 0 ? '' : '4 3'} />
        </g>
      ))}
      {endWords(series[0]?.points.at(-1), series[1]?.points.at(-1), y).map(({ word, at }) => (
        <text key={word} x={width - RIGHT + 6} y={at + 4} className={`walls-word walls-${word}`}>
          {word}
        </text>
      ))}
    </svg>
  );
}

const WORD_HEIGHT = 15;

/** The words at the ends of the lines, the canal's never on top of the outer one's. */
function endWords(outer: Point | undefined, canal: Point | undefined, y: (mm: number) => number) {
  const outerAt = outer && y(outer.mm);
  const canalAt = canal && Math.max(y(canal.mm), (outerAt ?? 0) + WORD_HEIGHT);
  return [
    ...(outerAt === undefined ? [] : [{ word: 'outer', at: outerAt }]),
    ...(canalAt === undefined ? [] : [{ word: 'canal', at: canalAt }]),
  ];
}

function pointsOf(stations: readonly Station[], pick: (station: Station) => number | null): Point[] {
  return stations.flatMap((station) => {
    const mm = pick(station);
    return mm === null ? [] : [{ s: station.sMm, mm, sd: station.sdMm }];
  });
}

function described({ stations, fracture }: JoinedBone): string {
  const outer = stations.map(({ outerMm }) => Math.min(...outerMm));
  return `Outer width and canal along the bone. Narrowest outer width ${Math.min(...outer).toFixed(1)} mm, fracture at ${((fracture.fromMm + fracture.toMm) / 2).toFixed(1)} mm.`;
}
