import 'server-only'
import { buildContext, type Design, type ReviewFacts } from '@/lib/engine'
import {
  assessCapability,
  assessShelf,
  countCapability,
  type FabricatorBasis,
  findLightestHeldFoil,
  gatherProductionFacts,
  listParametersWith,
  type MeasuredDesign,
  measureDesign,
  type ProductionFacts,
  type ShelfContent,
} from '@/lib/fabrication'
import { withNesting } from './nesting'
import type { CompanySheets } from './sheet-records'

/** One request asks several times about one design: its values are found once. */
const measured = new WeakMap<Design, MeasuredDesign>()

export function measureOnce(design: Design): MeasuredDesign {
  const known = measured.get(design)
  if (known !== undefined) return known
  // Zones alone are measured, and no zone depends on a bend: bends are what an evaluation costs.
  const found = measureDesign(design, { zones: buildContext({ ...design, bends: [] }).zones })
  measured.set(design, found)
  return found
}

/**
 * What the fabricators' matrices, shelves, panels and rates say of a design. With several, the one that says the worst counts, as the
 * strictest of their limits does: the part must suit every fabricator that may build it. One who keeps no such sheet says nothing.
 *
 * @param companies  those whose sheets the view may rest on: a fabricator's view holds its own alone
 */
export function gatherFabricationFacts(
  design: Design,
  companies: readonly CompanySheets[],
  today: string,
): Pick<ReviewFacts, 'capability' | 'stock' | 'orderSlackDays' | 'lightestHeldFoilUm'> & ProductionFacts {
  const matrices = companies.flatMap(({ sheets }) => sheets.matrix?.content ?? [])
  const shelves = companies.flatMap(({ sheets }) => sheets.shelf?.content ?? [])
  const capability = findWorst(
    matrices.map(({ rows }) => {
      const assessed = assessCapability(measureOnce(design), rows)
      return {
        ...countCapability(assessed),
        stretchEntries: listParametersWith(assessed, 'stretch'),
        notStatedEntries: listParametersWith(assessed, 'not-stated'),
      }
    }),
    ({ outside, notStated, stretch }) => [outside, notStated, stretch],
  )
  const shelf = findWorst(
    shelves.map((content) => assessShelf(design, content, today)),
    ({ counts, orderSlackDays }) => [
      counts.unknown,
      counts.toOrder > 0 && orderSlackDays === null ? 1 : 0,
      -Math.min(0, orderSlackDays ?? 0),
      counts.toOrder,
      -(orderSlackDays ?? 0),
    ],
  )
  const lightestHeldFoilUm = findLightestFoilOfAll(shelves)
  return {
    ...withNesting((nest) => gatherProductionFacts(design, companies.map(toBasis), nest)),
    ...(capability === null ? {} : { capability }),
    ...(shelf === null ? {} : { stock: shelf.counts }),
    ...(lightestHeldFoilUm === null ? {} : { lightestHeldFoilUm }),
    ...(shelf?.orderSlackDays == null ? {} : { orderSlackDays: shelf.orderSlackDays }),
  }
}

/** The part must suit every fabricator that may build it: of the lightest foil that each holds, the heaviest. */
function findLightestFoilOfAll(shelves: readonly ShelfContent[]): number | null {
  const lightest = shelves.map(findLightestHeldFoil)
  return lightest.reduce<number | null>((most, um) => (um === null ? most : Math.max(most ?? 0, um)), null)
}

/** What a fabricator runs and charges. */
export function toBasis({ sheets }: CompanySheets): FabricatorBasis {
  return {
    formats: sheets['panel-formats']?.content ?? null,
    rates: sheets['process-rates']?.content ?? null,
  }
}

/** The candidate with the greatest measures, compared one after the other; the first of equals. */
function findWorst<T>(candidates: readonly T[], measure: (candidate: T) => readonly number[]): T | null {
  return candidates.reduce<T | null>((worst, next) => {
    if (worst === null) return next
    const [own, other] = [measure(next), measure(worst)]
    const at = own.findIndex((value, index) => value !== other[index])
    return at !== -1 && (own[at] ?? 0) > (other[at] ?? 0) ? next : worst
  }, null)
}
