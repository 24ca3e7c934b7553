export * from './blood/blood-loss.ts';
export * from './energy/energy.ts';
export * from './fluids/fluid-plan.ts';
export * from './sun/sun.ts';
