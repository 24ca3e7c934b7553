/** Hypodermic needle tubing by gauge, regular wall, nominal sizes. */
import { defineSet } from '../entry.ts';

const SOURCE = { title: 'needle gauge comparison chart, nominal outer and inner diameters, regular wall' };

const size = (gauge: number, side: 'outer' | 'inner', mm: number, lowMm: number, highMm: number) =>
  ({
    id: `needle.${gauge}.${side}`,
    name: `${side} diameter of ${gauge} gauge needle tubing, regular wall`,
    unit: 'mm',
    value: mm,
    low: lowMm,
    high: highMm,
    spread: 'range',
    appliesTo: 'regular wall; thin wall has a wider bore',
    source: SOURCE,
    status: 'seen',
    note: 'The range is that of ISO 9626:2016, from memory, widened to hold the nominal figure.',
  }) as const;

export const needle = defineSet([
  size(14, 'outer', 2.108, 1.95, 2.15),
  size(14, 'inner', 1.6, 1.5, 1.6),
  size(16, 'outer', 1.651, 1.6, 1.69),
  size(16, 'inner', 1.194, 1.1, 1.283),
  size(18, 'outer', 1.27, 1.2, 1.3),
  size(18, 'inner', 0.838, 0.79, 0.91),
  size(19, 'outer', 1.067, 1.03, 1.1),
  size(19, 'inner', 0.686, 0.648, 0.75),
  size(20, 'outer', 0.908, 0.86, 0.92),
  size(20, 'inner', 0.603, 0.56, 0.635),
  size(21, 'outer', 0.819, 0.8, 0.83),
  size(21, 'inner', 0.514, 0.49, 0.547),
  size(22, 'outer', 0.718, 0.698, 0.73),
  size(22, 'inner', 0.413, 0.39, 0.44),
  size(23, 'outer', 0.641, 0.6, 0.673),
  size(23, 'inner', 0.337, 0.317, 0.37),
  size(25, 'outer', 0.514, 0.5, 0.53),
  size(25, 'inner', 0.26, 0.232, 0.292),
]);
