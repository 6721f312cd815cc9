import type { EvaluationContext } from '../../../context'
import { callByName, type Material } from '../../../design'
import type { Outcome } from '../../../results'
import { defineItem } from '../../define-item'
import { askFor, findUnstated, listTerms, makeTermOutcome } from '../../terms'

type Rule = 'copperSubstitute' | 'filmSubstitute' | 'adhesiveSubstitute' | 'boardSubstitute'

/** Which rule speaks of which kind of material. */
const RULE_OF: Readonly<Record<Material['kind'], Rule | null>> = {
  'copper-foil': 'copperSubstitute',
  'polymer-film': 'filmSubstitute',
  'shield-film': 'filmSubstitute',
  'solder-mask': null,
  adhesive: 'adhesiveSubstitute',
  prepreg: 'boardSubstitute',
  'rigid-laminate': 'boardSubstitute',
  'metal-sheet': null,
}

export const substitutes = defineItem({
  id: 'substitutes',
  section: 'fabrication',
  severity: 'minor',
  question: 'Is it agreed which materials may be replaced without asking?',
  titles: { meets: 'Replacement of materials is agreed', fails: 'A foil that flexes may be replaced without asking' },
  appliesTo: { needs: ['layers'], says: 'every design' },
  limits: [],
  sourceKeys: ['ownChoice', 'flexLifeClasses'],
  restsOn: [
    'brief.agreements.copperSubstitute',
    'brief.agreements.filmSubstitute',
    'brief.agreements.adhesiveSubstitute',
    'brief.agreements.boardSubstitute',
    'bends.*.use',
    'construction.layers',
    'materials',
  ],
  decidedWhen: 'fabricator',
  answeredBy: ['member', 'fabricator'],
  monotone: [],
  check: (context) => {
    const rules = listRules(context)
    const missing = findUnstated(context, 'agreements', rules)
    const foil = checkFoil(context)
    return missing.length > 0
      ? [...askFor(missing), ...foil]
      : [...foil, makeTermOutcome('meets', `Agreed: ${listTerms(context, 'agreements', rules)}.`, 'ownChoice')]
  },
})

function listRules({ design, findMaterial }: EvaluationContext): Rule[] {
  const found = new Set<Rule>()
  for (const layer of design.construction.layers) {
    const kind = layer.kind === 'unbonded-gap' ? undefined : findMaterial(layer.materialId)?.kind
    const rule = kind === undefined ? null : RULE_OF[kind]
    if (rule !== null) found.add(rule)
  }
  return [...found]
}

/** Life is computed for one type of foil: another one, of the same thickness, lasts otherwise. */
function checkFoil({ design }: EvaluationContext): Outcome[] {
  if (design.brief.agreements.copperSubstitute !== 'equivalent') return []
  if (design.bends.some(({ use }) => use === 'dynamic')) {
    return [
      makeTermOutcome(
        'fails',
        'A bend flexes in service, and another foil may stand in without asking.',
        'flexLifeClasses',
      ),
    ]
  }
  return design.bends.flatMap((bend, index) =>
    bend.use === null
      ? askFor([{ path: ['bends', index, 'use'], label: `use of ${callByName('bend', bend.name)}` }])
      : [],
  )
}
