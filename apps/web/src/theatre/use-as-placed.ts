/** The plan as it stands half built, worked out beside the page; the last answer stays until the next one is in. */
import type { AsPlaced, Case, Construct, InTheatre } from '@bonewright/construct';
import { useEffect, useState } from 'react';
import type { Engine, Role } from '../plan/engine/engine.ts';

export interface AsPlacedAnswer {
  readonly answer: AsPlaced | null;
  /** What it was worked out for. */
  readonly about: InTheatre | null;
  readonly why: string | null;
}

const NOTHING: AsPlacedAnswer = { answer: null, about: null, why: null };
/** A hand on a stepper that paused this long is at rest. */
const REST_MS = 150;

/** `theatre` null: nothing is asked. It must stay the same object while it says the same. */
export function useAsPlaced(
  engine: Engine,
  role: Role,
  patientCase: Case,
  planned: Construct,
  theatre: InTheatre | null,
): AsPlacedAnswer {
  const [held, hold] = useState(NOTHING);
  useEffect(() => {
    if (!theatre) return;
    let isWanted = true;
    const ask = async () => {
      const said = await engine.ask(role, patientCase, (jobs, sent) => jobs.asPlaced(sent, planned, theatre));
      if (said && isWanted) hold({ answer: said.value, about: theatre, why: said.why });
    };
    const rest = setTimeout(() => void ask(), REST_MS);
    return () => {
      isWanted = false;
      clearTimeout(rest);
    };
  }, [engine, role, patientCase, planned, theatre]);
  return held;
}
