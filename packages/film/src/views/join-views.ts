/**
 * Two traced views to one bone in 3-D, as it would be reduced: levels matched where the fracture line crosses each
 * fragment's axis, sizes side by side, the fragments' axes laid in one line. Pairs are [craniocaudal, mediolateral];
 * offsets are positive medially and cranially.
 */
import { value } from '@bonewright/evidence';
import { InputError } from '@bonewright/fault';
import type { JoinedBone, Measured, TracedSegment, TracedView } from '../model/trace.ts';
import { lineFrame } from '../trace/frame.ts';
import { type Curve, columnward, endAt, type FragmentView, fragmentView, obliquity } from './traced-fragment.ts';
import { trueAngle } from './true-angle.ts';

/** A view with what its +column side means for the patient. */
interface Side {
  readonly name: 'craniocaudal' | 'mediolateral';
  readonly view: TracedView;
  readonly mmPerPixel: number;
  readonly segments: readonly [TracedSegment, TracedSegment];
  /** +1 where +column is medial (craniocaudal) or cranial (mediolateral). */
  readonly sign: 1 | -1;
  readonly fragments: readonly [FragmentView, FragmentView];
  /** Ends of the bone, t in mm: proximal end of the proximal fragment, distal end of the distal one. */
  readonly ends: readonly [number, number];
}

type Station = JoinedBone['stations'][number];

/** Joins the views. Throws InputError where a view has no scale, not two fragments, or a side that is not its own. */
export function joinViews(craniocaudal: TracedView, mediolateral: TracedView, betweenViewsDeg: number): JoinedBone {
  const cc = sideOf('craniocaudal', craniocaudal);
  const ml = sideOf('mediolateral', mediolateral);
  const warnings: string[] = [];
  const lengths = ([0, 1] as const).map((k) => fragmentLength(cc, ml, k, warnings)) as [Measured, Measured];
  const proximalMm = lengths[0].value!;
  const lengthMm = proximalMm + lengths[1].value!;
  const stations = stationsAlong(cc, ml, proximalMm, lengthMm, warnings);
  const bend = bendOf(cc, ml, betweenViewsDeg, warnings);
  return {
    lengthMm: { value: lengthMm, sd: Math.hypot(lengths[0].sd!, lengths[1].sd!) },
    stations,
    fracture: fractureOf(cc, ml, stations, proximalMm, lengthMm),
    ...bend,
    translationMm: translationOf(cc, ml),
    narrowestCanalMm: narrowest([cc, ml], proximalMm),
    warnings,
  };
}

function sideOf(name: Side['name'], view: TracedView): Side {
  const { trace } = view;
  const mm = trace.mmPerPixel.value;
  if (mm === null) {
    throw new InputError(
      `the ${name} view has no scale: ${trace.mmPerPixel.why ?? ''}`,
      `${name}.calibration`,
      'calibrate it first',
    );
  }
  const [a, b] = trace.segments;
  if (!a || !b)
    throw new InputError(`the ${name} view has one fragment only`, `${name}.segments`, 'trace both fragments');
  const [positive, negative] = name === 'craniocaudal' ? ['medial', 'lateral'] : ['cranial', 'caudal'];
  if (view.columnTowards !== positive && view.columnTowards !== negative) {
    throw new InputError(
      `the ${name} view cannot show ${view.columnTowards} across the bone`,
      `${name}.columnTowards`,
      `say ${positive} or ${negative}`,
    );
  }
  for (const segment of [a, b]) {
    if (Math.abs(lineFrame(segment.axis.from, segment.axis.to).across[0]) < 0.5) {
      throw new InputError(
        `the bone lies along the rows of the ${name} view`,
        `${name}.segments`,
        'turn the film so that the bone runs up and down',
      );
    }
  }
  const fragments = [fragmentView(a, view, mm), fragmentView(b, view, mm)] as const;
  const ends = [
    view.boneEnds ? endAt(a, view, view.boneEnds[0], mm) : fragments[0].from,
    view.boneEnds ? endAt(b, view, view.boneEnds[1], mm) : fragments[1].to,
  ] as const;
  for (const [k, f] of fragments.entries()) {
    if (f.outer.t.length < 2) {
      throw new InputError(
        `no outer edge of the ${k === 0 ? 'proximal' : 'distal'} fragment could be read in the ${name} view`,
        `${name}.segments[${k}]`,
        'trace it again or use another film',
      );
    }
  }
  return {
    name,
    view,
    mmPerPixel: mm,
    segments: [a, b],
    sign: view.columnTowards === positive ? 1 : -1,
    fragments,
    ends,
  };
}

/** A tilted bone looks shorter, so the longer view is nearer the truth. */
function fragmentLength(cc: Side, ml: Side, k: 0 | 1, warnings: string[]): Measured {
  const seen = [Math.abs(cc.ends[k]), Math.abs(ml.ends[k])] as const;
  const longest = Math.max(...seen);
  const apart = Math.abs(seen[0] - seen[1]);
  const share = value('imaging.views.length-difference');
  if (apart > share * longest) {
    const name = k === 0 ? 'proximal' : 'distal';
    warnings.push(
      `the ${name} fragment is ${seen[0].toFixed(1)} mm long in the craniocaudal view and ${seen[1].toFixed(1)} mm in the mediolateral one: a limb lay tilted, or the ends are marked differently`,
    );
  }
  const scaleSd = [cc, ml].map((s) => (s.view.trace.mmPerPixel.sd ?? 0) / s.mmPerPixel);
  return { value: longest, sd: Math.hypot(apart / 3, Math.max(...scaleSd) * longest, 0.25) };
}

/** Stations from end to end; t of each view is stretched so that both views' ends meet. */
function stationsAlong(cc: Side, ml: Side, proximalMm: number, lengthMm: number, warnings: string[]): Station[] {
  const spacing = value('imaging.join.spacing');
  const count = Math.ceil(lengthMm / spacing);
  const join = [cc, ml].map((side) => continuous(side));
  let guessed = 0;
  const raw = Array.from({ length: count + 1 }, (_, i) => {
    const sMm = (i / count) * lengthMm;
    const k = sMm <= proximalMm ? 0 : 1;
    const t = sMm - proximalMm;
    const fragmentMm = k === 0 ? proximalMm : lengthMm - proximalMm;
    const views = [cc, ml].map((side, v) => {
      const own = side.view.boneEnds ? (t * Math.abs(side.ends[k])) / fragmentMm : t;
      const f = side.fragments[k];
      const outer = readCurve(f.outer, own);
      const canal = f.canal.t.length > 0 ? readCurve(f.canal, own) : null;
      const offset = readCurve(f.offset, own).value + (k === 1 ? join[v]! : 0);
      return { outer, canal, offset: side.sign * offset };
    });
    const [a, b] = views as [(typeof views)[0], (typeof views)[0]];
    if (Math.max(a.outer.beyond, b.outer.beyond) > spacing) guessed++;
    const canal =
      a.canal && b.canal
        ? ([Math.min(a.canal.value, 0.98 * a.outer.value), Math.min(b.canal.value, 0.98 * b.outer.value)] as const)
        : null;
    return {
      sMm,
      outerMm: [a.outer.value, b.outer.value] as const,
      canalMm: canal,
      offsetMm: [a.offset, b.offset] as const,
      sdMm: Math.max(a.outer.sd, b.outer.sd, a.canal?.sd ?? 0, b.canal?.sd ?? 0),
    };
  });
  if (guessed > 0) {
    warnings.push(
      `${((guessed / (count + 1)) * 100).toFixed(0)} % of the bone's length lies beyond what could be traced; its size there is held at the nearest reading`,
    );
  }
  return straightened(raw);
}

/** How far the distal fragment's own axis must be moved so that the centreline runs on at the fracture. */
function continuous(side: Side): number {
  return readCurve(side.fragments[0].offset, 0).value - readCurve(side.fragments[1].offset, 0).value;
}

/** Value and sd at t: linear between readings; beyond them, or across a hole, the nearest one with a growing sd. */
function readCurve(c: Curve, t: number): { value: number; sd: number; beyond: number } {
  const n = c.t.length;
  const grow = value('imaging.join.sd-growth');
  const k = c.t.findIndex((q) => q >= t);
  if (k === 0 || k === -1) {
    const i = k === 0 ? 0 : n - 1;
    const beyond = Math.abs(t - c.t[i]!);
    return { value: c.value[i]!, sd: Math.hypot(c.sd[i]!, grow * beyond), beyond };
  }
  const gap = c.t[k]! - c.t[k - 1]!;
  const u = gap > 0 ? (t - c.t[k - 1]!) / gap : 0;
  const beyond = Math.min(u, 1 - u) * gap;
  return {
    value: c.value[k - 1]! * (1 - u) + c.value[k]! * u,
    sd: Math.hypot(c.sd[k - 1]! * (1 - u) + c.sd[k]! * u, gap > 1 ? grow * beyond : 0),
    beyond,
  };
}

/** Offsets from the straight line between the bone's ends. */
export function straightened(stations: readonly Station[]): Station[] {
  const first = stations[0]!;
  const last = stations[stations.length - 1]!;
  return stations.map((s) => {
    const u = s.sMm / last.sMm;
    const off = (i: 0 | 1) => s.offsetMm[i] - (first.offsetMm[i] * (1 - u) + last.offsetMm[i] * u);
    return { ...s, offsetMm: [off(0), off(1)] as const };
  });
}

function fractureOf(
  cc: Side,
  ml: Side,
  stations: readonly Station[],
  atMm: number,
  lengthMm: number,
): JoinedBone['fracture'] {
  const at = stations.reduce((a, b) => (Math.abs(b.sMm - atMm) < Math.abs(a.sMm - atMm) ? b : a));
  const tangent = [cc, ml].map((s) => Math.tan((obliquity(s.segments[0], s.view) * Math.PI) / 180)) as [number, number];
  const along = Math.max(
    value('imaging.fracture.least-length'),
    Math.hypot(at.outerMm[0] * tangent[0], at.outerMm[1] * tangent[1]),
  );
  return {
    fromMm: Math.max(0, atMm - along / 2),
    toMm: Math.min(lengthMm, atMm + along / 2),
    obliquityDeg: (Math.atan(Math.hypot(...tangent)) * 180) / Math.PI,
  };
}

/** Bend of the distal fragment towards medial or cranial, from the film's own sign. */
function signedBend(side: Side): Measured {
  const m = side.view.trace.angulationDeg;
  if (m.value === null) return m;
  const [a] = side.segments;
  return { ...m, value: m.value * columnward(lineFrame(a.axis.from, a.axis.to)) * side.sign };
}

function bendOf(
  cc: Side,
  ml: Side,
  betweenViewsDeg: number,
  warnings: string[],
): Pick<JoinedBone, 'angulationDeg' | 'planeFromCraniocaudalDeg'> {
  const a = signedBend(cc);
  const b = signedBend(ml);
  if (a.value === null || b.value === null) {
    const why = `one view shows no angle: ${a.why ?? b.why ?? ''}`;
    const none: Measured = { value: null, sd: null, why };
    return { angulationDeg: { craniocaudal: a, mediolateral: b, true: none }, planeFromCraniocaudalDeg: none };
  }
  const doubt = value('imaging.views.angle-doubt');
  const at = (x: number, y: number, g: number) => trueAngle([x, y], g);
  const best = at(a.value, b.value, betweenViewsDeg);
  const steps = [
    at(a.value + a.sd!, b.value, betweenViewsDeg),
    at(a.value, b.value + b.sd!, betweenViewsDeg),
    at(a.value, b.value, betweenViewsDeg + doubt),
  ];
  const spread = (pick: (t: typeof best) => number) => Math.hypot(...steps.map((s) => pick(s) - pick(best)));
  const turn = (d: number) => ((((d + 180) % 360) + 360) % 360) - 180;
  if (Math.abs(betweenViewsDeg - 90) > 1) {
    warnings.push(
      `the views are ${betweenViewsDeg} degrees apart: sections are taken as if their axes lay in the two views`,
    );
  }
  return {
    angulationDeg: {
      craniocaudal: a,
      mediolateral: b,
      true: { value: best.trueAngulationDeg, sd: spread((t) => t.trueAngulationDeg) },
    },
    planeFromCraniocaudalDeg: {
      value: best.planeFromFirstViewDeg,
      sd: Math.hypot(...steps.map((s) => turn(s.planeFromFirstViewDeg - best.planeFromFirstViewDeg))),
    },
  };
}

/** Both views' offsets together. */
function translationOf(cc: Side, ml: Side): Measured {
  const a = cc.view.trace.translationMm;
  const b = ml.view.trace.translationMm;
  if (a.value === null || b.value === null) {
    return { value: null, sd: null, why: `one view shows no offset: ${a.why ?? b.why ?? ''}` };
  }
  const total = Math.hypot(a.value, b.value);
  const sd = total > 0 ? Math.hypot(a.value * a.sd!, b.value * b.sd!) / total : Math.hypot(a.sd!, b.sd!);
  return { value: total, sd };
}

function narrowest(sides: readonly Side[], proximalMm: number): JoinedBone['narrowestCanalMm'] {
  const all = sides.flatMap((side) =>
    side.fragments.flatMap((f) =>
      f.canal.t.map((t, i) => ({ value: f.canal.value[i]!, sd: f.canal.sd[i]!, sMm: proximalMm + t, view: side.name })),
    ),
  );
  if (all.length === 0) return null;
  return all.reduce((a, b) => (b.value < a.value ? b : a));
}
