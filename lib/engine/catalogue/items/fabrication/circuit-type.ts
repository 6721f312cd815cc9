import type { CIRCUIT_TYPES, Design } from '../../../design'
import { BRIEF_PLACE } from '../../checks'
import { decide, makeNoneAllowed, notComputed } from '../../decide'
import { defineItem } from '../../define-item'

type CircuitType = (typeof CIRCUIT_TYPES)[number]

export const circuitType = defineItem({
  id: 'circuit-type',
  section: 'fabrication',
  severity: 'major',
  question: 'Does the stated circuit type agree with the construction?',
  titles: {
    meets: 'Circuit type and construction agree',
    fails: 'Circuit type and construction contradict each other',
  },
  appliesTo: { needs: ['conductor-layers'], says: 'designs with a conductor layer' },
  limits: [],
  sourceKeys: ['ipc6013', 'flexUses'],
  restsOn: ['brief.circuitType', 'construction.layers', 'construction.zones', 'features.holes'],
  decidedWhen: 'early',
  answeredBy: ['member'],
  monotone: [],
  check: ({ design }) => {
    const stated = design.brief.circuitType
    if (stated === null) return [notComputed(['brief', 'circuitType'], 'circuit type', [BRIEF_PLACE])]
    const fitting = listFittingTypes(design)
    return [
      decide({
        value: fitting.includes(stated) ? 0 : 1,
        limit: makeNoneAllowed('typeContradictionsCount', 'ipc6013'),
        places: [BRIEF_PLACE],
        what: 'contradictions between type and construction',
        equation: 'types 1 to 5 by layers, plated holes and rigid zones',
        cautions:
          stated === 'type-2' && fitting.includes('type-5')
            ? [
                'No hole is plated: MIL-PRF-50884F, 1.2.1, calls two layers without plated holes type 2 too; IPC-6013 has type 5 for them. Say by which of the two.',
              ]
            : [],
        remark: `Stated ${stated.replace('-', ' ')}; the construction is ${fitting.map((type) => type.replace('-', ' ')).join(' or ')}.`,
      }),
    ]
  },
})

/** More than one where nothing tells whether holes are plated. */
function listFittingTypes({ construction, features }: Design): CircuitType[] {
  const conductors = construction.layers.filter((layer) => layer.kind === 'conductor')
  const hasRigid = construction.zones.some((zone) => zone.kind === 'rigid')
  if (conductors.length === 1 && !hasRigid) return ['type-1']
  const withHoles: CircuitType = hasRigid ? 'type-4' : conductors.length === 2 ? 'type-2' : 'type-3'
  const isPlated =
    features.holes.some((hole) => hole.plated === true) || conductors.some((layer) => layer.plating.process !== 'none')
  if (isPlated) return [withHoles]
  return conductors.length > 1 ? [withHoles, 'type-5'] : [withHoles]
}
