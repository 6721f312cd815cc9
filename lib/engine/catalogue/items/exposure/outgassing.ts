import { callByName, listOrganicMaterials } from '../../../design'
import type { MissingInput, Outcome } from '../../../results'
import { DESIGN_PLACE } from '../../checks'
import { decide, notComputed, notComputedFrom } from '../../decide'
import { defineItem } from '../../define-item'

export const outgassing = defineItem({
  id: 'outgassing',
  section: 'materials',
  severity: 'blocking',
  question: 'Do total mass loss and condensables of each film, adhesive and board stay within the limits in vacuum?',
  titles: { meets: 'Materials outgas little enough', fails: 'A material outgasses too much' },
  appliesTo: { needs: ['layers'], says: 'parts that work in vacuum' },
  limits: ['totalMassLossPct', 'condensableMatterPct'],
  sourceKeys: ['outgassingLimits'],
  restsOn: ['brief.outgassing', 'construction.layers', 'materials'],
  decidedWhen: 'early',
  answeredBy: ['member', 'fabricator'],
  onlyWithProfile: true,
  monotone: [
    { path: 'brief.outgassing[].totalLossPct', worse: 'larger' },
    { path: 'brief.outgassing[].condensablePct', worse: 'larger' },
  ],
  check: (context) => {
    const typed = context.design.brief.outgassing
    const unknown = context.design.construction.layers.filter(
      (layer) => layer.kind !== 'unbonded-gap' && context.findMaterial(layer.materialId) === null,
    )
    const nameless: Outcome[] = unknown.map((layer) =>
      notComputed(['construction', 'layers'], `material of ${callByName('layer', layer.name)}`, [DESIGN_PLACE]),
    )
    const weighed = listOrganicMaterials(context.design).flatMap(({ id, name }): Outcome[] => {
      const index = typed.findIndex(({ materialId }) => materialId === id)
      const figures = typed[index]
      const at = ['brief', 'outgassing', index === -1 ? typed.length : index]
      const missing: MissingInput[] = []
      const outcomes: Outcome[] = []
      const compare = (
        field: 'totalLossPct' | 'condensablePct',
        key: 'totalMassLossPct' | 'condensableMatterPct',
        label: string,
      ) => {
        const value = figures?.[field] ?? null
        if (value === null) missing.push({ path: [...at, field], label: `${label} of ${name}` })
        else {
          outcomes.push(
            decide({
              value,
              limit: context.getLimit(key),
              places: [DESIGN_PLACE],
              what: `${label} of ${name}`,
              equation: '24 h at 125 °C in vacuum, as measured',
              isTyped: true,
            }),
          )
        }
      }
      compare('totalLossPct', 'totalMassLossPct', 'total mass loss')
      compare('condensablePct', 'condensableMatterPct', 'condensable matter')
      return missing.length === 0 ? outcomes : [...outcomes, notComputedFrom(missing, [DESIGN_PLACE])]
    })
    return [...nameless, ...weighed]
  },
})
