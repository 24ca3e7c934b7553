/** Rotations and reflections of a whole model. */
import type { FrameModel, Vec3, Vec6 } from '../model/frame-model.ts';

/** Rotation matrix about an axis by an angle (Rodrigues). */
export function rotation(axis: Vec3, angleRad: number): number[][] {
  const size = Math.hypot(...axis);
  const [x, y, z] = [axis[0] / size, axis[1] / size, axis[2] / size];
  const [c, s] = [Math.cos(angleRad), Math.sin(angleRad)];
  return [
    [c + x * x * (1 - c), x * y * (1 - c) - z * s, x * z * (1 - c) + y * s],
    [y * x * (1 - c) + z * s, c + y * y * (1 - c), y * z * (1 - c) - x * s],
    [z * x * (1 - c) - y * s, z * y * (1 - c) + x * s, c + z * z * (1 - c)],
  ];
}

export function multiply(a: readonly (readonly number[])[], b: readonly (readonly number[])[]): number[][] {
  return a.map((row) => [0, 1, 2].map((j) => row.reduce((sum, value, k) => sum + value * (b[k]?.[j] ?? 0), 0)));
}

/** The model with `shift` applied to every place and direction and `six` to every load; its springs must be alike all round. */
export function turned(
  model: FrameModel,
  shift: (v: readonly number[]) => number[],
  six: (v: Vec6) => Vec6,
): FrameModel {
  const vec = (v: Vec3): Vec3 => {
    const [a = 0, b = 0, c = 0] = shift(v);
    return [a, b, c];
  };
  return {
    ...model,
    nodes: mapGroup(model.nodes, vec),
    members: mapGroup(model.members, (m) => ({ ...m, ...(m.yAxis ? { yAxis: vec(m.yAxis) } : {}) })),
    contacts: mapGroup(model.contacts, (c) => ({ ...c, normal: vec(c.normal) })),
    sleeves: mapGroup(model.sleeves, (s) => ({ ...s, axis: vec(s.axis) })),
    loads: mapGroup(model.loads, (load) => mapGroup(load, six)),
  };
}

function mapGroup<T>(group: Readonly<Record<string, T>>, change: (value: T) => T): Record<string, T> {
  return Object.fromEntries(Object.entries(group).map(([name, value]) => [name, change(value)]));
}
