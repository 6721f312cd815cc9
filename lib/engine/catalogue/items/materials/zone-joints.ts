import type { EvaluationContext } from '../../../context'
import { callByName } from '../../../design'
import { type Outcome, placeOf, type ZoneResult } from '../../../results'
import { cannotTell, decide, makeNoneAllowed, notApplicable, notComputed } from '../../decide'
import { defineItem } from '../../define-item'
import { hasCopper } from '../../needs'

export const zoneJoints = defineItem({
  id: 'zone-joints',
  section: 'materials',
  severity: 'blocking',
  question: 'Does each zone share the layers that lead into the rest of the part?',
  titles: { meets: 'Layers lead from each zone into the others', fails: 'A zone shares no layer with the others' },
  appliesTo: { needs: ['layers', 'zones'], says: 'every construction' },
  limits: [],
  sourceKeys: ['exactArithmetic', 'commonPractice'],
  restsOn: ['construction.layers', 'construction.zones'],
  decidedWhen: 'early',
  answeredBy: ['member', 'fabricator'],
  monotone: [],
  check: (context): Outcome[] => {
    const empty = context.zones.flatMap((zone, index) =>
      zone.layers.length > 0
        ? []
        : [
            notComputed(['construction', 'zones', index, 'presence'], `layers of ${callByName('zone', zone.name)}`, [
              placeOfZone(zone),
            ]),
          ],
    )
    const zones = context.zones.filter(({ layers }) => layers.length > 0)
    if (empty.length > 0) return empty
    return [zones.length < 2 ? notApplicable('the part has one zone') : judge(zones)]
  },
})

function judge(zones: EvaluationContext['zones']): Outcome {
  const apart = findApart(zones, (one, other) => isJoint(one, other) && !areBoards(one, other))
  // Two boards may be one piece of laminate: what only they share may hold, and nobody has said so.
  const apartAnyway = findApart(zones, isJoint)
  const what = 'zones that no layer leads into'
  if (apart.length > 0 && apartAnyway.length === 0) {
    return cannotTell(
      what,
      {
        because: `what ${nameZones(apart)} shares with other zones is layers of rigid boards alone, and no layer of the flex goes into it`,
        decidedBy: 'let the flexible layers run through it, or say on which sheet the boards are one piece',
      },
      apart.map(placeOfZone),
    )
  }
  return decide({
    value: apartAnyway.length,
    limit: makeNoneAllowed('zonesApartCount', 'exactArithmetic'),
    places: apartAnyway.map(placeOfZone),
    what,
    equation: 'layers that zones have in common, copper with copper',
    remark: apartAnyway.length === 0 ? undefined : `Apart: ${nameZones(apartAnyway)}.`,
  })
}

const placeOfZone = ({ zoneId, name }: ZoneResult) => placeOf('zone', { id: zoneId, name })

const nameZones = (zones: readonly ZoneResult[]): string => zones.map(({ name }) => name).join(', ')

const areBoards = (one: ZoneResult, other: ZoneResult): boolean => one.kind === 'rigid' && other.kind === 'rigid'

/** Sheets that run through where no copper does. */
const SHEETS: readonly string[] = ['base-film', 'bondply', 'coverlay-film']

/** Do two zones share a layer of copper, or a sheet where one of them has no copper? */
function isJoint(one: ZoneResult, other: ZoneResult): boolean {
  const bothCarry = one.layers.some(hasCopper) && other.layers.some(hasCopper)
  const leads = (layer: ZoneResult['layers'][number]) => (bothCarry ? hasCopper(layer) : SHEETS.includes(layer.kind))
  const ids = new Set(one.layers.filter(leads).map(({ layerId }) => layerId))
  return other.layers.some((layer) => leads(layer) && ids.has(layer.layerId))
}

/** Zones outside of the largest group that joints hold together. */
function findApart(
  zones: readonly ZoneResult[],
  joins: (one: ZoneResult, other: ZoneResult) => boolean,
): readonly ZoneResult[] {
  const left = new Set(zones)
  const groups: ZoneResult[][] = []
  for (const zone of zones) {
    if (!left.delete(zone)) continue
    const group = [zone]
    for (const member of group) {
      for (const other of [...left]) {
        if (!joins(member, other)) continue
        left.delete(other)
        group.push(other)
      }
    }
    groups.push(group)
  }
  const largest = groups.reduce<ZoneResult[]>((most, group) => (group.length > most.length ? group : most), [])
  return zones.filter((zone) => !largest.includes(zone))
}
