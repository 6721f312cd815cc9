import { type Design, FEATURE_FIELDS } from '@/lib/engine'
import { digitsAsEntered } from '@/lib/engine/units'
import { formatDesignation, nameConductorLayers } from '../../layer-designations'
import type { SheetTable } from './model'
import { formatObserved, type SheetWords } from './words'

const FIELDS = FEATURE_FIELDS.pads.entry

/** Lands and what holds them to the film. */
export function makeLandTable(design: Design, words: SheetWords): SheetTable {
  const designations = nameConductorLayers(design.construction)
  return {
    kind: 'table',
    id: 'pads',
    title: 'Pads and what holds them',
    keyColumnCount: 1,
    columns: [
      { label: FIELDS.name.label, leastMm: 28, growth: 1 },
      { label: FIELDS.layerId.label, leastMm: 19, growth: 0 },
      { label: FIELDS.zoneId.label, leastMm: 11, growth: 0 },
      { label: FIELDS.hasPlatedHole.label, leastMm: 17, growth: 0 },
      { label: `${FIELDS.coverlayCaptureMm.label}, ${words.planUnit}`, leastMm: 22, growth: 0, isNumeric: true },
      { label: FIELDS.anchorCount.label, leastMm: 16, growth: 0, isNumeric: true },
      { label: FIELDS.teardrop.label, leastMm: 17, growth: 0 },
    ],
    rows: design.features.pads.map((pad) => {
      const designation = designations.get(pad.layerId)
      return {
        id: pad.id,
        cells: [
          pad.name,
          designation === undefined ? words.layer(pad.layerId) : formatDesignation(designation),
          pad.zoneId === null ? 'not stated' : words.zone(pad.zoneId),
          formatObserved(pad.hasPlatedHole),
          words.plan(pad.coverlayCaptureMm),
          pad.anchorCount === null ? 'not stated' : digitsAsEntered(pad.anchorCount),
          formatObserved(pad.teardrop),
        ],
      }
    }),
  }
}
