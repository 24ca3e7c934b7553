export { loadDemonstration } from './load.ts';
