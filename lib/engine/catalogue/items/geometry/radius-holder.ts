import { callByName } from '../../../design'
import { listBends } from '../../checks'
import { decide, makeNoneAllowed, notComputed } from '../../decide'
import { defineItem } from '../../define-item'
import { BEND_PLACE_INPUTS } from '../../item-inputs'

export const radiusHolder = defineItem({
  id: 'radius-holder',
  section: 'geometry',
  severity: 'major',
  question: 'Does something hold each bend to its radius?',
  titles: { meets: 'Something holds each radius', fails: 'Nothing holds the radius of a bend' },
  appliesTo: { needs: ['bends'], says: 'designs with a bend' },
  limits: [],
  sourceKeys: ['commonPractice'],
  restsOn: ['bends.*.radiusHeldBy', 'bends.*.use', ...BEND_PLACE_INPUTS],
  decidedWhen: 'early',
  answeredBy: ['member', 'lead'],
  monotone: [],
  check: (context) =>
    listBends(context).map(({ bend, index, place }) =>
      bend.radiusHeldBy === null
        ? notComputed(['bends', index, 'radiusHeldBy'], `what holds the radius of ${callByName('bend', bend.name)}`, [
            place,
          ])
        : decide({
            value: bend.radiusHeldBy === 'nothing' ? 1 : 0,
            limit: makeNoneAllowed('unheldBendsCount', 'commonPractice'),
            places: [place],
            what: `bends without a hold at ${bend.name}`,
            equation: 'recorded observation',
            isStated: true,
            remark: bend.radiusHeldBy === 'nothing' ? undefined : `Held by: ${bend.radiusHeldBy.replaceAll('-', ' ')}.`,
          }),
    ),
  judgment: {
    evidence: 'A drawing, model or photograph that shows what keeps the radius in assembly and in service.',
  },
})
