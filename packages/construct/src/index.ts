export * from './model/case-file.ts';
export * from './model/plan.ts';
