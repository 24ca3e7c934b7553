/** Weight over time against admission. With a frame on it weighs more: such points are squares and name no change. */
import { type RecordedEvent, type WeightPoint, weightSeries } from '@bonewright/casebook';
import { scaleLinear, scaleTime } from 'd3-scale';
import { useSize } from '../drawing/use-size.ts';
import { massWords } from '../words/patient.ts';
import { moment } from '../words/time.ts';

const HEIGHT = 180;
const WIDEST = 560;
const PX_A_DATE = 110;
const EDGE = { left: 52, right: 16, top: 12, bottom: 26 };
const HEADROOM = 0.05;

export function WeightCurve({ recorded }: { readonly recorded: readonly RecordedEvent[] }) {
  const series = weightSeries(recorded);
  return (
    <section aria-labelledby="weight-title">
      <h2 id="weight-title">Weight</h2>
      {series.length === 0 && <p className="quiet">It was not weighed yet.</p>}
      {series.length > 1 && <Curve series={series} />}
      {series.length > 0 && (
        <table className="later-table">
          <caption className="sr-only">Every weight, and its change against admission</caption>
          <thead>
            <tr>
              <th scope="col">when</th>
              <th scope="col">mass</th>
              <th scope="col">against admission</th>
            </tr>
          </thead>
          <tbody>
            {series.toReversed().map(({ at, massG, withFrame, changePercent }) => (
              <tr key={`${at} ${massG}`}>
                <th scope="row">{moment(at)}</th>
                <td>{`${massWords(massG)}${withFrame ? ', frame on' : ''}`}</td>
                <td>{changePercent === null ? 'not compared, the frame weighs too' : changeWords(changePercent)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </section>
  );
}

const changeWords = (percent: number): string =>
  Math.abs(percent) < 0.05 ? 'the same' : `${Math.abs(percent).toFixed(1)} % ${percent > 0 ? 'more' : 'less'}`;

function Curve({ series }: { readonly series: readonly WeightPoint[] }) {
  const [frame, size] = useSize<HTMLDivElement>();
  const width = Math.min(size.width || WIDEST, WIDEST);
  const masses = series.map(({ massG }) => massG);
  const times = series.map(({ at }) => new Date(at));
  const x = scaleTime([times[0]!, times.at(-1)!], [EDGE.left, width - EDGE.right]);
  const y = scaleLinear(
    [Math.min(...masses) * (1 - HEADROOM), Math.max(...masses) * (1 + HEADROOM)],
    [HEIGHT - EDGE.bottom, EDGE.top],
  ).nice();
  const first = series.find(({ withFrame }) => !withFrame);
  const bare = series.filter(({ withFrame }) => !withFrame);
  const path = (of: readonly WeightPoint[]) => of.map(({ at, massG }) => `${x(new Date(at))} ${y(massG)}`).join('L');
  const last = series.at(-1);
  return (
    <div ref={frame}>
      <svg
        className="weight-curve"
        width={width}
        height={HEIGHT}
        viewBox={`0 0 ${width} ${HEIGHT}`}
        role="img"
        aria-label={`Weight from ${masses[0]} to ${last?.massG} g${last?.withFrame ? ' with the frame' : ''}, ${series.length} weights; each stands in the table below.`}
      >
        {y.ticks(4).map((tick) => (
          <g key={tick}>
            <line x1={EDGE.left} x2={width - EDGE.right} y1={y(tick)} y2={y(tick)} className="weight-grid" />
            <text x={EDGE.left - 8} y={y(tick) + 4} textAnchor="end">{`${tick} g`}</text>
          </g>
        ))}
        {x.ticks(Math.max(2, Math.floor(width / PX_A_DATE))).map((tick) => (
          <text key={tick.toISOString()} x={x(tick)} y={HEIGHT - 6} textAnchor="middle">
            {tick.toLocaleDateString('en-GB', { day: 'numeric', month: 'short' })}
          </text>
        ))}
        {first && (
          <line
            x1={EDGE.left}
            x2={width - EDGE.right}
            y1={y(first.massG)}
            y2={y(first.massG)}
            className="weight-admission"
          />
        )}
        {bare.length > 1 && <path d={`M${path(bare)}`} className="weight-line" />}
        {series.map(({ at, massG, withFrame }) =>
          withFrame ? (
            <rect key={at} x={x(new Date(at)) - 4} y={y(massG) - 4} width="8" height="8" className="weight-framed" />
          ) : (
            <circle key={at} cx={x(new Date(at))} cy={y(massG)} r="4.5" />
          ),
        )}
        <text x={EDGE.left + 6} y={EDGE.top + 4}>
          dot: bare; square: frame on; dashes: at admission
        </text>
      </svg>
    </div>
  );
}
