/** What an assessment says. The names are those of the command line's output. */
import type { RuleName } from '../strength/rules.ts';

export type Verdict = 'good' | 'watch' | 'stop';

export const LOADS = ['axial-ball', 'axial-guided', 'bending-in-plane', 'bending-out-of-plane', 'torsion'] as const;
export type LoadName = (typeof LOADS)[number];

/** The loads as a surgeon reads them, on screen and on paper. */
export const LOAD_WORDS: Readonly<Record<LoadName, string>> = {
  'axial-ball': 'Along the bone, ends free',
  'axial-guided': 'Along the bone, ends guided',
  'bending-in-plane': 'Bent in the plane of the frame',
  'bending-out-of-plane': 'Bent across the frame',
  torsion: 'Twisted',
};

/** One thing for each load. */
export const eachLoad = <T>(of: (load: LoadName) => T): Readonly<Record<LoadName, T>> => ({
  'axial-ball': of('axial-ball'),
  'axial-guided': of('axial-guided'),
  'bending-in-plane': of('bending-in-plane'),
  'bending-out-of-plane': of('bending-out-of-plane'),
  torsion: of('torsion'),
});

export interface Check {
  /** `pin-ratio`, `fracture-distance`, ... */
  readonly id: string;
  readonly value: number | null;
  readonly unit: string;
  readonly watch: number | null;
  readonly stop: number | null;
  readonly verdict: Verdict;
  /** The sentence a colleague would say, with the figure in it. */
  readonly because: string;
  /** Evidence ids. */
  readonly evidence: readonly string[];
  /** Which pin it is about: 1 for P1; absent for the whole construct. */
  readonly pin?: number;
}

export interface Margin {
  readonly p05: number;
  readonly p50: number;
  readonly p95: number;
  /** The place that decides, in words: `P3 where it enters the column`. */
  readonly weakest: string;
}

export interface LoadFigures {
  /** What was laid on it: N along the bone, N·mm otherwise, and what the patient does when it comes. */
  readonly applied?: { readonly size: number; readonly unit: 'N' | 'N·mm'; readonly event: string };
  readonly stiffness: number;
  readonly unit: 'N/mm' | 'N·mm/deg';
  readonly gapMotionMm: number;
  readonly gapStrainPercent: number | null;
  readonly peakPinMPa: number;
  readonly peakImMPa: number | null;
  readonly peakColumnMPa: number;
  readonly peakBoneMPa: number;
  readonly margin: Margin;
  /** The check of strength that decides the margin. */
  readonly governs?: RuleName;
  /** Evidence ids behind its figures. */
  readonly evidence?: readonly string[];
}

export interface PlanPin {
  readonly drawerId: string;
  readonly sMm: number;
  readonly tiltDeg: number;
  readonly aboutDeg: number;
  /** 1 where the pin stops short of the far wall. */
  readonly cortices?: 1 | 2 | undefined;
  readonly diameterMm: number;
  /** Near cortex to the column's near surface, along the pin. */
  readonly freeLengthMm: number;
  /** Pin diameter over bone width at the hole. */
  readonly ratio: number;
  /** How many times its hole weakens the bone: measured on whole bones, and the elastic factors of handbooks. */
  readonly hole?: { readonly measured: number; readonly elasticBending: number; readonly elasticTorsion: number };
  /** Whole length to cut, from far cortex (1 mm proud) to the column's far surface. */
  readonly cutLengthMm: number;
}

export interface Plan {
  /** How this plan differs in kind: `surest`, `fewest holes`, `lightest`, `no IM pin`, or `as chosen`. */
  readonly label: string;
  readonly lastResort: boolean;
  readonly im: {
    readonly drawerId: string;
    readonly tiedIn: boolean;
    readonly diameterMm: number;
    readonly lengthMm: number;
    /** Share of the narrowest canal, 0 to 1; null where the canal is not measured. */
    readonly canalFill: number | null;
  } | null;
  readonly pins: readonly PlanPin[];
  readonly column: readonly {
    readonly drawerId: string;
    readonly clearanceMm: number;
    readonly side: 'near' | 'far';
    readonly diameterMm: number;
    readonly fromMm: number;
    readonly toMm: number;
    readonly massG: number;
  }[];
  /** How pins were taken to be held; absent: usual. */
  readonly grip?: 'usual' | 'bonded';
  readonly holes: number;
  readonly massG: number;
  readonly massPercentBody: number;
  readonly checks: readonly Check[];
  readonly loads: Readonly<Record<LoadName, LoadFigures>>;
  readonly sensitivity: readonly {
    readonly input: string;
    readonly effectOnMarginPercent: number;
    /** Evidence id of the input's spread; absent where the case itself states it. */
    readonly evidence?: string;
  }[];
  readonly verdict: Verdict;
}

export interface Ranking {
  readonly plans: readonly Plan[];
  readonly candidates: number;
  readonly solved: number;
  readonly refused: readonly { readonly check: string; readonly count: number }[];
  /** Only where `plans` is empty: what is missing, in words. */
  readonly nearest?: string;
}

/** The loads of a plan, the one with the least margin first. */
export const loadsWorstFirst = ({ loads }: Pick<Plan, 'loads'>): readonly LoadName[] =>
  LOADS.toSorted((a, b) => loads[a].margin.p05 - loads[b].margin.p05);

const WORRY: Readonly<Record<Verdict, number>> = { good: 0, watch: 1, stop: 2 };

/** Orders by verdict, the most worrying first. */
export const byWorry = (a: { readonly verdict: Verdict }, b: { readonly verdict: Verdict }): number =>
  WORRY[b.verdict] - WORRY[a.verdict];

/** The most worrying of several verdicts; good where there is none. */
export const worstVerdict = (verdicts: readonly Verdict[]): Verdict =>
  verdicts.reduce<Verdict>((worst, next) => (WORRY[next] > WORRY[worst] ? next : worst), 'good');
