/** What the scores add up to beside the published thresholds, with what the scores cannot do. */
import { CORTEX_GRADES, type HealingSeries } from '@bonewright/film';
import { EvidenceLines } from '../plan/margins/evidence-lines.tsx';
import { Opens } from '../plan/margins/opens.tsx';
import { capital } from '../words/patient.ts';

export function Union({ series }: { readonly series: HealingSeries }) {
  const { scale, thresholds, remarks, weaknesses, lowest, highest } = series;
  return (
    <section aria-labelledby="union-title" className="union">
      <h3 id="union-title">{`${scale}, ${lowest} to ${highest}`}</h3>
      <ol className="union-grades">
        {CORTEX_GRADES[scale].map((words) => (
          <li key={words}>{words}</li>
        ))}
      </ol>
      <p className="caption">
        {scale === 'RUST'
          ? 'Definition: Whelan 2010, as restated on the JBJS blog.'
          : 'Definition: Litrenta 2015, as restated on the JBJS blog.'}
      </p>
      <table className="later-table">
        <caption className="sr-only">Published scores at union</caption>
        <thead>
          <tr>
            <th scope="col">at union in</th>
            <th scope="col">score</th>
            <th scope="col">reached</th>
            <th scope="col">source</th>
          </tr>
        </thead>
        <tbody>
          {thresholds.map(({ species, score, reachedOnDay, source, status }) => (
            <tr key={species}>
              <th scope="row">{species}</th>
              <td className="later-figure">{score}</td>
              <td>{reachedOnDay === null ? 'not yet' : `day ${reachedOnDay}`}</td>
              <td className="quiet">{`${source}, ${status === 'seen' ? 'seen' : 'unverified, from memory'}`}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {remarks.map((remark) => (
        <p key={remark}>{`${capital(remark)}.`}</p>
      ))}
      <ul className="later-reasons">
        {weaknesses.map((weakness) => (
          <li key={weakness}>{`${capital(weakness)}.`}</li>
        ))}
      </ul>
      <Opens className="later-opens" summary="Where the thresholds come from">
        {() => <EvidenceLines ids={thresholds.map(({ evidence }) => evidence)} />}
      </Opens>
    </section>
  );
}
