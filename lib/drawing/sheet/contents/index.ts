import type { Design } from '@/lib/engine'
import { makeArray } from './array'
import { makeBendTable, makeFlexTestTable } from './bends'
import { makeContactEndTables } from './contact-ends'
import { makeCopperByZoneTable } from './copper-by-zone'
import { makeFeatureTables } from './features'
import { makeFolded } from './folded'
import { makeImpedanceTable } from './impedances'
import { makeLayerTable } from './layers'
import { makeLeafLengthTable } from './leaf-lengths'
import type { SheetBlock, SheetResults } from './model'
import { makeNotes } from './notes'
import { makeCornerTable, makePlan } from './plan'
import { makePlacedTables } from './plan-placed'
import { makeStiffenerTable } from './stiffeners'
import { makeSheetWords, type SheetUnits } from './words'
import { makeConnectorTable, makeSections, makeZoneTable } from './zones'

export { NOT_ASKED } from './bends'
export { IN_NO_ZONE } from './layers'
export type {
  CrossSectionBlock,
  SheetArray,
  SheetBlock,
  SheetColumn,
  SheetDrawnPlan,
  SheetFolded,
  SheetNotes,
  SheetPlan,
  SheetResults,
  SheetTable,
} from './model'
export { makeRevisionTable, type RevisionEntry } from './revisions'
export { NO_ZONES } from './stiffeners'
export { FILE_UNITS, makeSheetWords, type SheetUnits } from './words'

/**
 * Everything that the drawing sheet says, in reading order. It follows from the design and its results alone, so that
 * it cannot disagree with them.
 *
 * @param results  null before anything was computed: thickness per zone and sections are then left out
 */
export function makeSheetContents(design: Design, results: SheetResults | null, units: SheetUnits): SheetBlock[] {
  const words = makeSheetWords(design.construction, units)
  const blocks: (SheetBlock | null)[] = [
    makeLayerTable(design, results, words),
    makeZoneTable(design, results, words),
    makeCopperByZoneTable(design, words),
    makeNotes(design, results, words),
    makeBendTable(design, words),
    makeLeafLengthTable(design, results, words),
    makeFlexTestTable(design, words),
    makeStiffenerTable(design, words),
    makeConnectorTable(design, results, words),
    ...makeContactEndTables(design, words),
    ...makeSections(results, words),
    makePlan(design),
    makeFolded(design, results),
    makeArray(design),
    makeCornerTable(design, words),
    ...makePlacedTables(design, words),
    ...makeFeatureTables(design, words),
    makeImpedanceTable(design, results),
  ]
  return blocks.filter((block) => block !== null)
}
