/** A trace as the user corrected it: pure, from the trace and the list of corrections, undone by dropping one. */
import { InputError } from '@bonewright/fault';
import type { Trace } from '../model/trace.ts';
import { correctedSegment } from './corrected-segment.ts';
import type { Correction } from './correction.ts';
import { realigned, withNewAxis } from './realigned.ts';

/**
 * The trace with edges where the user put them (sd: the click) and stations left out. Neighbours within one bone width
 * follow smoothly; the axis, angulation and translation are worked out anew. Nothing is fitted again: the film is not
 * looked at, so an edge that the trace mistook over a longer stretch needs an edge placed at least every bone width.
 * Corrections are always of the original trace; of two for one edge the later one counts. Throws InputError for a
 * segment that the trace does not have and for a trace without scale.
 */
export function correctedTrace(trace: Trace, corrections: readonly Correction[]): Trace {
  for (const [i, { segment }] of corrections.entries()) {
    if (!trace.segments.some((s) => s.name === segment)) {
      throw new InputError(
        `the trace has no fragment "${segment}"`,
        `corrections[${i}].segment`,
        `use ${trace.segments.map((s) => `"${s.name}"`).join(' or ')}`,
      );
    }
  }
  const { value: mm, sd } = trace.mmPerPixel;
  if (corrections.length === 0) return trace;
  if (mm === null) throw new InputError('the trace has no scale', 'trace.mmPerPixel', 'calibrate the film first');
  const scale = { mm, relativeSd: (sd ?? 0) / mm };
  const segments = trace.segments.map((segment) => {
    const own = corrections.filter((c) => c.segment === segment.name);
    return own.length === 0 ? segment : withNewAxis(segment, correctedSegment(segment, scale, own));
  });
  return realigned(trace, segments);
}
