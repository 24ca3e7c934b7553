/** What a case looks like at one moment: the fold of its events. Every part carries who signed it, when, and by which event. */
import type { Payload, RecordedEvent } from './events.ts';
import type { Admitted } from './kinds/admission.ts';
import type { Care } from './kinds/care.ts';
import type { Chart } from './kinds/chart.ts';
import type { CourseOfCase } from './kinds/course.ts';
import type { DoseInCase } from './kinds/doses.ts';
import type { HandMeasurement } from './kinds/hand-measures.ts';
import type { Stage } from './payloads.ts';

/** A value as somebody signed it. */
export interface Signed<T> {
  readonly value: T;
  readonly seq: number;
  readonly at: string;
  readonly by: string;
  readonly why?: string;
}

export type View = Payload<'film-view-set'>['view'];

export interface FilmState {
  readonly filmId: string;
  readonly file: Signed<Payload<'film-added'>>;
  readonly view: Signed<View | null>;
  /** As somebody said by hand; absent until then. */
  readonly occasion?: Signed<Payload<'film-occasion-set'>['occasion']>;
  readonly calibration: Signed<Payload<'film-calibrated'>['calibration']> | null;
  readonly clicks: Signed<Omit<Payload<'film-clicked'>, 'filmId'>> | null;
  /** Null until traced, and again when the calibration or the clicks change. */
  readonly trace: Signed<Payload<'film-traced'>['trace']> | null;
  readonly fractureLine: Signed<Payload<'fracture-marked'>['line']> | null;
  /** Of the trace above; absent until somebody corrects it, and again when it is made anew. */
  readonly corrections?: Signed<Payload<'film-corrected'>['corrections']>;
  /** Measured by hand; absent until somebody does. */
  readonly handMeasures?: readonly Signed<HandMeasurement>[];
  /** Where the plan was laid over this film; absent until it is. */
  readonly placing?: Signed<Omit<Payload<'plan-placed'>, 'filmId'>>;
}

export type Patient = Payload<'case-opened'>;

/** What was done to one pin so far; corrections take the place of what they correct. */
export interface PinInTheatre {
  readonly pin: number;
  /** Where it stands; null while it is not in. */
  readonly placed: Signed<Payload<'pin-placed'>> | null;
  /** Where it would not go, in order. */
  readonly tried: readonly Signed<Payload<'pin-skipped'>>[];
  /** Why it will not be placed at all; null otherwise. */
  readonly leftOut: Signed<Payload<'pin-skipped'>> | null;
}

export interface Theatre {
  /** In the order in which they were first touched. */
  readonly pins: readonly PinInTheatre[];
  /** The last mix. */
  readonly putty: {
    readonly mixed: Signed<Payload<'putty-mixed'>>;
    readonly hard: Signed<Payload<'putty-hard'>> | null;
  } | null;
  /** The last count of each thing, in the order of the first. */
  readonly counts: readonly Signed<Payload<'counted'>>[];
}

export interface CaseState {
  readonly caseId: string;
  /** The number of the last event; 0 before the first. */
  readonly seq: number;
  readonly openedAt: string;
  readonly changedAt: string;
  /** As last amended; null only before the case was opened. */
  readonly patient: Signed<Patient> | null;
  /** In the order they were added. */
  readonly films: readonly FilmState[];
  readonly bone: Signed<Payload<'bone-joined'>> | null;
  /** As last moved on the screen and kept: planning takes its bone. Null until then, and again when the bone is joined anew. */
  readonly reduction: Signed<Payload<'bone-reduced'>> | null;
  readonly fracture: Signed<Payload<'fracture-described'>> | null;
  readonly keepOut: Signed<Payload<'keep-out-set'>> | null;
  readonly corridors: Signed<Payload<'corridors-set'>['corridors']> | null;
  readonly softTissueMm: Signed<Payload<'soft-tissue-set'>['softTissueMm']> | null;
  readonly drawer: Signed<Payload<'drawer-set'>> | null;
  readonly construct: Signed<Payload<'construct-chosen'>> | null;
  readonly ranking: Signed<Payload<'plans-ranked'>> | null;
  readonly sheets: readonly Signed<Payload<'sheet-printed'>>[];
  readonly theatre: Theatre;
  /** The last test of each column of the drawer. */
  readonly benchTests: readonly Signed<Payload<'bench-tested'>>[];
  /** The last scores of each day on each scale, in the order in which they were first given. */
  readonly scores: readonly Signed<Payload<'cortices-scored'>>[];
  /** How it came, and what was decided. */
  readonly admission: Admitted;
  /** Anaesthetic chart, fluids, checklists. */
  readonly chart: Chart;
  /** Day by day, by carers and nurses. */
  readonly care: Care;
  /** Union, frame off, release, outcomes. */
  readonly course: CourseOfCase;
  /** In the order in which they were first written down. */
  readonly doses: readonly DoseInCase[];
  readonly notes: readonly Signed<Payload<'note-added'>>[];
  /** The stage somebody entered; null where it follows from the work done. */
  readonly enteredStage: Signed<Stage> | null;
  /** Events that say nothing here, and why: from a newer version, or about a film that is gone. */
  readonly setAside: readonly { readonly event: RecordedEvent; readonly because: string }[];
}
