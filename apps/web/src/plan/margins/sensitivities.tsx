/** Which inputs move the worst margin most, largest first. */
import type { Plan } from '@bonewright/construct';
import { capital } from '../../words/patient.ts';
import { figure } from '../words.ts';

/** Smaller effects are counted, not listed. */
const LEAST_PERCENT = 0.5;

export function Sensitivities({ plan }: { readonly plan: Plan }) {
  const counted = plan.sensitivity.filter(
    ({ effectOnMarginPercent }) => Math.abs(effectOnMarginPercent) >= LEAST_PERCENT,
  );
  const rest = plan.sensitivity.length - counted.length;
  const most = Math.max(1, ...counted.map(({ effectOnMarginPercent }) => Math.abs(effectOnMarginPercent)));
  return (
    <section className="side-section">
      <header className="side-head">
        <h2>What moves it</h2>
        <span className="quiet">one standard deviation off, the worst margin by %</span>
      </header>
      {plan.sensitivity.length === 0 && <p className="quiet">Not known until the full figures are in.</p>}
      <table className="sensitivities">
        <tbody>
          {counted.map(({ input, effectOnMarginPercent }) => (
            <tr key={input}>
              <th scope="row">{capital(input)}</th>
              <td>
                <svg width="100%" height="14" aria-hidden="true">
                  <rect
                    x="0"
                    y="2"
                    height="10"
                    width={`${(Math.abs(effectOnMarginPercent) / most) * 100}%`}
                    fill="var(--ink)"
                  />
                </svg>
              </td>
              <td className="number">{figure(effectOnMarginPercent, 0)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {rest > 0 && <p className="quiet">{`${rest} more inputs move it by less than ${LEAST_PERCENT} %.`}</p>}
    </section>
  );
}
