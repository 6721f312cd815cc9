import { callByName } from '../../../design'
import type { Outcome } from '../../../results'
import { inSentence } from '../../../units'
import { type BendUnderCheck, checkObserved, listBends } from '../../checks'
import { notApplicable, notComputed } from '../../decide'
import { defineItem } from '../../define-item'

/** A bend further off than this does not work on the edge. Our choice: a guide's ordinary length of a flex zone. */
const FAR_MM = 5

const KIND_WORDS = {
  bead: 'a flexible bead',
  'cover-under-edge': 'coverlay under the edge',
  'rounded-edge': 'a rounded edge',
} as const

export const transitionRelief = defineItem({
  id: 'transition-relief',
  section: 'geometry',
  severity: 'minor',
  question: 'Is strain relieved where the flex leaves a rigid zone, and is it said how?',
  titles: { meets: 'Transitions have strain relief', fails: 'A transition has no strain relief' },
  appliesTo: { needs: ['bends', 'transitions'], says: 'parts that bend beside a rigid or stiffened zone' },
  limits: [],
  sourceKeys: ['commonPractice'],
  restsOn: [
    'bends.*.strainReliefAtTransition',
    'bends.*.strainReliefKind',
    'bends.*.strainReliefWidthMm',
    'bends.*.distanceToRigidMm',
    'bends.*.insideRadiusMm',
    'bends.*.angleDeg',
    'bends.*.use',
  ],
  decidedWhen: 'layout',
  answeredBy: ['member'],
  monotone: [{ path: 'bends[].strainReliefAtTransition', worse: 'no' }],
  check: (context) => listBends(context).map(checkRelief),
})

function checkRelief({ bend, index, place }: BendUnderCheck): Outcome {
  const { strainReliefAtTransition: hasRelief, strainReliefKind: kind, strainReliefWidthMm: widthMm } = bend
  if (hasRelief !== false && bend.distanceToRigidMm === null) {
    return notComputed(
      ['bends', index, 'distanceToRigidMm'],
      `distance of ${callByName('bend', bend.name)} from the rigid edge`,
      [place],
    )
  }
  if (bend.distanceToRigidMm !== null && bend.distanceToRigidMm > FAR_MM) {
    return notApplicable(`${callByName('bend', bend.name)} lies more than ${FAR_MM} mm from the rigid edge`, [place])
  }
  if (hasRelief === true && kind === null) {
    return notComputed(
      ['bends', index, 'strainReliefKind'],
      `kind of strain relief beside ${callByName('bend', bend.name)}`,
      [place],
      'stated',
    )
  }
  if (hasRelief === true && kind !== 'rounded-edge' && widthMm === null) {
    return notComputed(
      ['bends', index, 'strainReliefWidthMm'],
      `width of the strain relief beside ${callByName('bend', bend.name)}`,
      [place],
      'stated',
    )
  }
  const width = widthMm === null ? '' : `, ${inSentence(widthMm, 'mm')} wide`
  return checkObserved({
    observed: hasRelief,
    wanted: true,
    path: ['bends', index, 'strainReliefAtTransition'],
    label: `strain relief beside ${callByName('bend', bend.name)}`,
    whenRight: `Relief beside ${bend.name}${kind === null ? '' : `: ${KIND_WORDS[kind]}`}${width}.`,
    whenWrong: `No relief beside ${bend.name}.`,
    places: [place],
    sourceKey: 'commonPractice',
  })
}
