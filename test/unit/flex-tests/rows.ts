import type { LimitOwner } from '@/lib/engine'
import { type FlexTestRow, listTestedLives } from '@/lib/engine/flex-tests'

export const WORKSPACE: LimitOwner = { kind: 'workspace', name: 'Quillmoor' }
export const FABRICATOR: LimitOwner = { kind: 'fabricator', name: 'Tarnbeck' }

/** Invented: twelve specimens of one circuit, nine failed, three taken out at 90 000 cycles. */
export const CYCLES = [21_000, 27_500, 33_000, 38_000, 41_500, 47_000, 55_000, 61_000, 78_000, 90_000, 90_000, 90_000]

/** The circuit of `makeOneBend`: 93 um thick, foil 18 um, bent one way to 4 mm. */
export function makeRows(change: Partial<FlexTestRow> = {}, cycles: readonly number[] = CYCLES): FlexTestRow[] {
  return cycles.map((each, at) => ({
    set: 'Hinge 18',
    specimen: `S${at + 1}`,
    kind: 'circuit',
    foil: 'copper-ra',
    foilUm: 18,
    thicknessUm: 93,
    insideRadiusMm: 4,
    motion: 'one-way',
    strainRangePct: 0.4,
    cycles: each,
    result: each < 90_000 ? 'failed' : 'survived',
    temperatureDegC: 23,
    testedOn: '2026-05-04',
    laboratory: 'Own laboratory',
    report: 'QM-T-0412',
    note: '',
    ...change,
  }))
}

export const livesOf = (rows: readonly FlexTestRow[], owner = WORKSPACE) => listTestedLives(rows, owner)
