import { saveSheet } from '@/lib/data'
import type { FlexTestRow } from '@/lib/engine/flex-tests'
import type { Workspace } from './people'
import type { Stage } from './stage'

/** Cycles at failure by inside radius, invented; 250 000 is the end of the test, which some outlasted. */
const LIVES = [
  [6, 0.55, [9_800, 12_400, 15_100, 16_700, 19_300, 23_900]],
  [10, 0.34, [58_000, 74_000, 81_000, 97_000, 122_000, 250_000]],
] as const
const END_OF_TEST = 250_000

/** Heavier foil than the scenario's parts have: the sheet shows what tests give, and moves no verdict of theirs. */
const BRACKENFOLD_TESTS: FlexTestRow[] = LIVES.flatMap(([insideRadiusMm, strainRangePct, lives], group) =>
  lives.map((cycles, at) => ({
    set: 'RA 35 one side',
    specimen: `B${group * 6 + at + 1}`,
    kind: 'circuit',
    foil: 'copper-ra',
    foilUm: 35,
    thicknessUm: 110,
    insideRadiusMm,
    motion: 'one-way',
    strainRangePct,
    cycles,
    result: cycles < END_OF_TEST ? 'failed' : 'survived',
    temperatureDegC: 23,
    testedOn: '2026-06-18',
    laboratory: 'Own laboratory',
    report: 'BF-FX-031',
    note: 'Film 25, acrylic 25 both sides; conductors 0.3 mm along the part.',
  })),
)

/** Flex tests of one fabricator, with two radii and a survivor. */
export async function setFlexTests({ carryOut }: Stage, { people, companies }: Workspace): Promise<void> {
  await carryOut('save the flex tests of Brackenfold', () =>
    saveSheet(people.brackenfold, {
      companyId: companies.brackenfold,
      kind: 'flex-tests',
      seenVersion: 0,
      issuedOn: '2026-06-22',
      note: '',
      content: { rows: BRACKENFOLD_TESTS },
    }),
  )
}
