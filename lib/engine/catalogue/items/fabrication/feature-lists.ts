import type { EvaluationContext } from '../../../context'
import { MARKABLE_LISTS, type MarkableList } from '../../../design'
import type { Outcome } from '../../../results'
import { capitalise } from '../../../units'
import { DESIGN_PLACE, placeOf } from '../../checks'
import { listUncrossedLayers } from '../../crossings'
import { notComputedFrom } from '../../decide'
import { defineItem } from '../../define-item'
import { findContradictedMarks, LISTS, readListState } from '../../listed'
import { hasCopper } from '../../needs'

export const featureLists = defineItem({
  id: 'feature-lists',
  section: 'fabrication',
  severity: 'major',
  question: 'Is every list of bends and features filled, or marked as having none of the kind?',
  titles: { meets: 'Every list is filled or marked', fails: 'A mark of "none" is contradicted' },
  appliesTo: { needs: ['layers'], says: 'designs with layers' },
  limits: [],
  sourceKeys: ['ownChoice'],
  restsOn: [
    'bends',
    'bends.*.zoneId',
    'features',
    'construction.layers',
    'construction.zones',
    'brief.solderedAssembly',
  ],
  decidedWhen: 'layout',
  answeredBy: ['member'],
  monotone: [],
  check: (context) => {
    const contradicted = findContradictedMarks(context)
    const states = MARKABLE_LISTS.filter((list) => !contradicted.some((found) => found.list === list)).map((list) => ({
      list,
      state: readListState(list, context),
    }))
    const filled = states.filter(({ state }) => state === 'filled')
    const none = states.filter(({ state }) => state === 'none')
    return [
      ...contradicted.map(({ list, because }) => say('fails', `${capitalise(LISTS[list].one)}: ${because}.`)),
      ...states.flatMap(({ state }): Outcome[] =>
        typeof state === 'string'
          ? []
          : [
              {
                ...notComputedFrom([state.missing], [DESIGN_PLACE]),
                rests: 'typed',
                summary: `Not computed: ${state.because}.`,
              },
            ],
      ),
      ...listSilentLayers(context),
      ...listUncrossedLayers(context).map(
        ({ missing, places, because }): Outcome => ({
          ...notComputedFrom([missing], places),
          rests: 'typed',
          summary: `Not computed: ${because}.`,
        }),
      ),
      ...(filled.length === 0
        ? []
        : [
            say(
              'meets',
              `Listed: ${filled.map(({ list }) => `${LISTS[list].one} (${LISTS[list].count(context.design)})`).join(', ')}. Whether each list is complete is not checked here.`,
            ),
          ]),
      ...(none.length === 0 ? [] : [say('meets', `None, as marked or as follows from a mark: ${nameLists(none)}.`)]),
    ]
  },
})

/** Layers of conductors of which the list holds none: nothing would be asked of what they carry. */
function listSilentLayers({ design, zones }: EvaluationContext): Outcome[] {
  const listed = new Set(design.features.conductors.map(({ layerId }) => layerId))
  const copper = new Set(zones.flatMap(({ layers }) => layers.filter(hasCopper).map(({ layerId }) => layerId)))
  const silent = design.construction.layers.filter(
    (layer) => layer.kind === 'conductor' && layer.role !== 'plane' && copper.has(layer.id) && !listed.has(layer.id),
  )
  if (listed.size === 0) return []
  return silent.map((layer): Outcome => {
    const missing = { path: ['features', 'conductors'], label: `a conductor on ${layer.name}` }
    return {
      ...notComputedFrom([missing], [placeOf('layer', layer)]),
      rests: 'typed',
      summary: `Not computed: no conductor is listed on ${layer.name}, so its width, space, current and voltage are not asked.`,
    }
  })
}

function say(verdict: 'meets' | 'fails', summary: string): Outcome {
  return { kind: 'said', verdict, rests: 'typed', sourceKey: 'ownChoice', places: [DESIGN_PLACE], summary }
}

const nameLists = (lists: readonly { list: MarkableList }[]) => lists.map(({ list }) => LISTS[list].one).join(', ')
