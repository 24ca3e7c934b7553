/** What is read off in theatre while pins go in. */
import { defineSet } from '../entry.ts';

export const theatre = defineSet([
  {
    id: 'rule.pilot.under-core',
    name: 'how much thinner a pilot hole is than the part of the pin that stands in the bone',
    unit: 'mm',
    value: 0.1,
    low: 0,
    high: 0.2,
    spread: 'range',
    appliesTo: 'external-fixator pins in dogs; taken over to small wires, where drilling first may not be possible',
    source: { title: 'Clary and Roe, Vet Surg, from memory', year: 1996 },
    status: 'memory',
    note: 'Pins thinner than the finest drill at hand are driven without a pilot hole: the surgeon decides.',
  },
]);
