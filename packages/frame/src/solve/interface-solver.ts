/**
 * The end of every solve: from the loads that the condensed frame passes on to the interface's motions, under each load
 * case's supports and with contacts and sleeves in their true state.
 */
import { FreeMotion, solveTangent, stateSolver } from './contact-state.ts';
import type { GapCoordinates } from './gap-coordinates.ts';
import type { GapLaws } from './gaps.ts';
import { type HeldInterface, holdInterface, refreshBlock, refreshGaps } from './held-interface.ts';
import type { Memory } from './memory.ts';
import { measureHeld, measureTangent, type Structure } from './pivots.ts';
import type { Program } from './program.ts';
import { backSquare, forwardSquare } from './square.ts';

export interface InterfaceSolver {
  /** Takes over the condensed frame. Throws FreeMotion. */
  refresh(): void;
  /**
   * In one of `columns` columns of `x` puts the kept unknowns' motions in the place of the loads on them.
   * Throws FreeMotion, or InputError where contacts cannot settle.
   */
  settle(load: number, x: Float64Array, columns: number, column: number): void;
  /** The same with contacts and sleeves frozen in the state found last. */
  correct(load: number, x: Float64Array, columns: number, column: number): void;
  /** Amounts of contacts' and sleeves' rows in the state found last. */
  readonly amounts: Float64Array;
}

/** @param setOf for each load case the index of its support set in `heldBy` */
export function interfaceSolver(
  program: Program,
  memory: () => Memory,
  coordinates: GapCoordinates,
  laws: GapLaws,
  rowUnknowns: Int32Array,
  heldBy: readonly Int32Array[],
  setOf: Int32Array,
): InterfaceSolver {
  const sets = shareRooms(heldBy, (slots) => holdInterface(program, slots, rowUnknowns, laws.contacts));
  const distinct = new Set(sets);
  const kept = program.unknowns - program.interior - program.hidden;
  const firstKept = program.interior + program.hidden;
  const structure = (): Structure => ({ program, memory: memory(), coordinates });
  const solver = stateSolver(kept, laws, (held, tangent, unknown, amounts) =>
    measureTangent(structure(), laws, held, tangent, unknown, amounts),
  );
  const part = new Float64Array(kept);
  const force = new Float64Array(kept);
  const motion = new Float64Array(kept);

  let current: HeldInterface | undefined;

  function refresh(): void {
    for (const held of distinct) {
      current = held;
      refreshBlock(held, program, memory(), judge);
      refreshGaps(held, program, coordinates.rows);
    }
  }

  function judge(unknown: number): number {
    if (!current) throw new Error('no interface is being refreshed');
    const { pivot, freeMotion } = measureHeld(structure(), current, unknown);
    if (freeMotion) throw new FreeMotion(freeMotion);
    return pivot;
  }

  function settle(load: number, x: Float64Array, columns: number, column: number): void {
    const held = sets[setOf[load]!]!;
    passOn(held, x, columns, column);
    solver.solve(held, force, motion);
    complete(held, x, columns, column);
  }

  function correct(load: number, x: Float64Array, columns: number, column: number): void {
    const held = sets[setOf[load]!]!;
    passOn(held, x, columns, column);
    for (let i = 0; i < held.open.n; i++) motion[i] = force[i]!;
    solveTangent(solver.tangent(), motion);
    complete(held, x, columns, column);
  }

  /** Reads the loads of a column and takes them through to those on what contacts and sleeves measure. */
  function passOn(
    { unknowns, eliminated, whole, open }: HeldInterface,
    x: Float64Array,
    columns: number,
    column: number,
  ): void {
    for (let i = 0; i < unknowns.length; i++) part[i] = x[unknowns[i]! * columns + column]!;
    forwardSquare(whole.values, whole.n, eliminated, whole.inverse, part);
    for (let i = 0; i < open.n; i++) force[i] = part[eliminated + i]!;
  }

  /** From the measured unknowns' motions to all kept ones', written to the column. */
  function complete(
    { unknowns, eliminated, whole, open }: HeldInterface,
    x: Float64Array,
    columns: number,
    column: number,
  ): void {
    for (let i = 0; i < open.n; i++) part[eliminated + i] = motion[i]!;
    backSquare(whole.values, whole.n, eliminated, whole.inverse, part);
    for (let i = firstKept; i <= program.unknowns; i++) x[i * columns + column] = 0;
    for (let i = 0; i < unknowns.length; i++) x[unknowns[i]! * columns + column] = part[i]!;
  }

  return { refresh, settle, correct, amounts: solver.amounts };
}

/** One room for all sets that hold the same. */
function shareRooms(heldBy: readonly Int32Array[], make: (slots: Int32Array) => HeldInterface): HeldInterface[] {
  const rooms = new Map<string, HeldInterface>();
  return heldBy.map((slots) => {
    const key = slots.toSorted().join();
    const room = rooms.get(key) ?? make(slots);
    rooms.set(key, room);
    return room;
  });
}
