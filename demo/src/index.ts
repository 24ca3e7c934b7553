export { loadDemonstration } from './load.ts';
export { removeFromPractice } from './practice.ts';
