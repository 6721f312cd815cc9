import { measureRoom, ROOM_SIDES } from '../../../folding'
import type { Outcome } from '../../../results'
import { inSentence } from '../../../units'
import { DESIGN_PLACE } from '../../checks'
import { decide, makeDesignLimit, notComputed } from '../../decide'
import { defineItem } from '../../define-item'
import { judgeLeafSlack, onFolded } from '../../folding-ground'
import { BEND_PLACE_INPUTS, SECTION_INPUTS } from '../../item-inputs'

export const foldedEnvelope = defineItem({
  id: 'folded-envelope',
  section: 'geometry',
  severity: 'major',
  question: 'Does the folded part, with what stands on it, fit the room that it has?',
  titles: { meets: 'The folded part fits its room', fails: 'The folded part is larger than its room' },
  appliesTo: { needs: ['bends', 'bend-lines'], says: 'designs whose plan has the axis of a bend' },
  limits: ['leafLengthDifferenceMm'],
  sourceKeys: ['exactArithmetic'],
  restsOn: [
    'plan',
    ...SECTION_INPUTS,
    ...BEND_PLACE_INPUTS,
    'bends.*.insideFace',
    'bends.*.use',
    'bends.*.leafLengths',
    'bends.*.leafStepMm',
  ],
  decidedWhen: 'layout',
  answeredBy: ['member'],
  monotone: ROOM_SIDES.map(({ field }) => ({ path: `plan.housing.${field}`, worse: 'smaller' as const })),
  check: (context) => {
    const housing = context.design.plan?.housing ?? null
    const open = ROOM_SIDES.filter(({ field }) => (housing?.[field] ?? null) === null).map(
      ({ field, words }): Outcome =>
        notComputed(['plan', 'housing', field], `room ${words} for the folded part`, [DESIGN_PLACE], 'typed'),
    )
    if (open.length === ROOM_SIDES.length) return open
    return [
      ...onFolded(context, 'the room that the folded part takes', (folding) => [
        ...measureRoom(context.design, folding).flatMap(({ words, takenMm, takenRangeMm, roomMm }): Outcome[] =>
          roomMm === null
            ? []
            : [
                decide({
                  value: takenMm,
                  range: takenRangeMm,
                  limit: makeDesignLimit({
                    key: 'foldedRoomMm',
                    value: roomMm,
                    unit: 'mm',
                    sense: 'at-most',
                    sourceKey: 'exactArithmetic',
                    name: 'room for the folded part',
                  }),
                  places: [DESIGN_PLACE],
                  what: `folded part ${words}`,
                  equation: 'box of the folded solids, components included',
                  summary: `Folded, the part takes ${inSentence(takenMm, 'mm')} ${words}; its room is ${inSentence(roomMm, 'mm')}.`,
                }),
              ],
        ),
        ...judgeLeafSlack(context, folding, 'the room that the folded part takes'),
      ]),
      ...open,
    ]
  },
})
