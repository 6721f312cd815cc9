import { callByName } from '../../../design'
import type { Outcome, ZoneLayerResult } from '../../../results'
import { placeOf } from '../../checks'
import { decide, makeNoneAllowed, notComputed } from '../../decide'
import { defineItem } from '../../define-item'

export const sheetBonds = defineItem({
  id: 'sheet-bonds',
  section: 'materials',
  severity: 'blocking',
  question: 'Does something bond each sheet of every zone to the next?',
  titles: { meets: 'Every sheet is bonded', fails: 'Nothing bonds two sheets that touch' },
  appliesTo: { needs: ['layers', 'zones'], says: 'every construction' },
  limits: [],
  sourceKeys: ['commonPractice'],
  restsOn: ['construction.layers', 'construction.zones'],
  decidedWhen: 'early',
  answeredBy: ['member', 'fabricator'],
  monotone: [],
  check: (context) =>
    context.zones.map((zone, index): Outcome => {
      const place = placeOf('zone', { id: zone.zoneId, name: zone.name })
      if (zone.layers.length === 0) {
        return notComputed(['construction', 'zones', index, 'presence'], `layers of ${callByName('zone', zone.name)}`, [
          place,
        ])
      }
      const loose = listLooseFaces(zone.layers)
      return decide({
        value: loose.length,
        limit: makeNoneAllowed('looseFacesCount', 'commonPractice'),
        places: [place, ...loose.map(([upper]) => placeOf('layer', { id: upper.layerId, name: upper.name }))],
        what: `faces in ${zone.name} that touch with nothing to bond them`,
        equation: 'order of the layers',
        remark:
          loose.length === 0
            ? undefined
            : `${loose.map(([upper, lower]) => `${upper.name} on ${lower.name}`).join('; ')}. Put an adhesive between them, or air where they are meant to be loose.`,
      })
    }),
})

/** What bonds by itself, is coated on, or leaves sheets apart. A shield film is bought with its adhesive. */
const NEEDS_NO_BOND: readonly ZoneLayerResult['kind'][] = [
  'adhesive',
  'bondply',
  'no-flow-prepreg',
  'solder-mask',
  'shield-film',
  'unbonded-gap',
]
/** Sheets that foil is bought on. */
const CLAD: readonly ZoneLayerResult['kind'][] = ['base-film', 'rigid-laminate']

/** Neighbours that nothing bonds. Foil comes bonded to one sheet: between two of them it is loose on one face. */
function listLooseFaces(all: readonly ZoneLayerResult[]): (readonly [ZoneLayerResult, ZoneLayerResult])[] {
  const layers = all.filter(({ kind, coverageFraction }) => kind !== 'conductor' || coverageFraction !== 0)
  let heldFoil: ZoneLayerResult | null = null
  return layers.flatMap((upper, at) => {
    const lower = layers[at + 1]
    if (lower === undefined || NEEDS_NO_BOND.includes(upper.kind) || NEEDS_NO_BOND.includes(lower.kind)) return []
    const [foil, sheet] = upper.kind === 'conductor' ? [upper, lower] : [lower, upper]
    if (foil.kind === 'conductor' && CLAD.includes(sheet.kind) && foil !== heldFoil) {
      heldFoil = foil
      return []
    }
    return [[upper, lower] as const]
  })
}
