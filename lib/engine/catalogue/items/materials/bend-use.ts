import type { EvaluationContext } from '../../../context'
import { callByName, type INSTALLATION_USES } from '../../../design'
import type { MissingInput, Outcome } from '../../../results'
import { capitalise, inSentence } from '../../../units'
import { BRIEF_PLACE, listBends } from '../../checks'
import { decide, makeNoneAllowed, notComputed, notComputedFrom } from '../../decide'
import { defineItem } from '../../define-item'
import { readListState } from '../../listed'
import { isUseContradicted } from '../../stated-cycles'

type Use = (typeof INSTALLATION_USES)[number]

/** Above this, IPC-6013 asks for use C. */
const HOT_ABOVE_DEG_C = 105

export const bendUse = defineItem({
  id: 'bend-use',
  section: 'materials',
  severity: 'blocking',
  question:
    'Do the stated uses cover how the bends move, the temperature and the flame class, and say no more than that?',
  titles: {
    meets: 'The stated uses cover what the part does',
    fails: 'Stated uses and what the part does disagree',
  },
  appliesTo: { needs: ['layers'], says: 'designs with layers' },
  limits: [],
  sourceKeys: ['ipc6013'],
  restsOn: [
    'bends.*.use',
    'bends.*.motion',
    'bends.*.requiredCycles',
    'brief.installationUses',
    'brief.operatingMaxDegC',
    'brief.acceptance.flameClass',
  ],
  decidedWhen: 'early',
  answeredBy: ['member', 'lead'],
  monotone: [],
  check: (context) => {
    const ofBends = listBends(context).map(({ bend, index, place }): Outcome => {
      if (bend.use === null)
        return notComputed(['bends', index, 'use'], `use of ${callByName('bend', bend.name)}`, [place])
      if (bend.use === 'dynamic' && bend.requiredCycles === null) {
        return notComputed(['bends', index, 'requiredCycles'], `required cycles of ${callByName('bend', bend.name)}`, [
          place,
        ])
      }
      const isAskedForMore = isUseContradicted(bend)
      return decide({
        value: isAskedForMore ? 1 : 0,
        limit: makeNoneAllowed('useContradictionsCount', 'ipc6013'),
        places: [place],
        what: `contradictions between the use of ${callByName('bend', bend.name)} and its cycles`,
        equation: 'stated use against the cycles asked for',
        remark: isAskedForMore
          ? `${inSentence(bend.requiredCycles ?? 0, 'cycles')} are more than a bend that stands still in service goes through: state it as dynamic, or take the cycles out.`
          : undefined,
      })
    })
    return [...ofBends, ...checkUses(context)]
  },
})

/** What is certain is compared even where something else is missing: a use that is short is short. */
function checkUses(context: EvaluationContext): Outcome[] {
  const { brief, bends } = context.design
  const uses = new Set<Use>(brief.installationUses)
  if (uses.size === 0)
    return [notComputed(['brief', 'installationUses'], 'installation uses of the part', [BRIEF_PLACE])]
  const missing: MissingInput[] = []
  const wrong: string[] = []
  const state = readListState('bends', context)
  if (typeof state !== 'string') missing.push(state.missing)
  const hasMoving = bends.some(({ use }) => use === 'dynamic')
  const mayMove = typeof state !== 'string' || bends.some(({ use }) => use === null || use === 'dynamic')
  if (hasMoving && !uses.has('use-b')) {
    wrong.push(
      `${bends.flatMap(({ use, name }) => (use === 'dynamic' ? [name] : [])).join(', ')} moves in service: use B, continuous flexing, is not among the stated uses`,
    )
  }
  if (uses.has('use-b') && !mayMove) wrong.push('use B, continuous flexing, is stated and no bend moves in service')
  if (bends.some(({ use }) => use !== null) && !uses.has('use-a') && !uses.has('use-b')) {
    wrong.push('the part bends, and neither use A nor use B is stated')
  }
  const { operatingMaxDegC } = brief
  if (operatingMaxDegC === null)
    missing.push({ path: ['brief', 'operatingMaxDegC'], label: 'highest operating temperature' })
  else {
    const isHot = operatingMaxDegC > HOT_ABOVE_DEG_C
    const reached = inSentence(operatingMaxDegC, 'degC')
    if (isHot && !uses.has('use-c')) wrong.push(`${reached} asks for use C, above 105 °C`)
    if (!isHot && uses.has('use-c')) wrong.push(`use C, above 105 °C, is stated and the part reaches ${reached}`)
  }
  const { flameClass } = brief.acceptance
  if (flameClass === null) missing.push({ path: ['brief', 'acceptance', 'flameClass'], label: 'flame class' })
  else {
    if (flameClass !== 'not-asked' && !uses.has('use-d')) wrong.push('a flame class asks for use D')
    if (flameClass === 'not-asked' && uses.has('use-d')) wrong.push('use D is stated and no flame class is asked for')
  }
  const compared = decide({
    value: wrong.length,
    limit: makeNoneAllowed('useContradictionsCount', 'ipc6013'),
    places: [BRIEF_PLACE],
    what: 'contradictions between the stated uses and what the part does',
    equation: 'uses A to D against the use of bends, temperature and flame class',
    remark: wrong.length === 0 ? undefined : `${capitalise(wrong.join('; '))}.`,
  })
  return missing.length === 0 ? [compared] : [compared, notComputedFrom(missing, [BRIEF_PLACE])]
}
