import { benchConstruct } from './construct.ts';
for (const r of benchConstruct()) console.log(r.what, r.figure, r.unit, r.goal);
