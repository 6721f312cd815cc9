import type { Outcome } from '../../../results'
import { BRIEF_PLACE } from '../../checks'
import { cannotTell, notComputed } from '../../decide'
import { defineItem } from '../../define-item'
import { listDryingTerms } from '../../drying-terms'
import { checkGiven } from '../../given'
import { BAKE_HOURS, BAKE_TEMPERATURE_DEGC, HOURS_TO_SOLDER } from '../../process-figures'

export const floorLife = defineItem({
  id: 'floor-life',
  section: 'materials',
  severity: 'major',
  question: 'Is drying before soldering agreed in numbers: bake temperature, time, hours to soldering, and by whom?',
  titles: { meets: 'Drying is given in numbers', fails: 'Drying is not given in numbers' },
  appliesTo: { needs: ['soldering'], says: 'parts that are soldered' },
  limits: [],
  sourceKeys: ['ipc1601', 'guideMoisture'],
  restsOn: [
    'brief.bakeBeforeAssembly',
    'brief.assembly.drying',
    'brief.assembly.bakeDegC',
    'brief.assembly.bakeHours',
    'brief.assembly.toSolderHours',
    'brief.assembly.dryingSetBy',
    'brief.assembly.isDryPacked',
    'brief.solderedAssembly',
    'construction.layers.*.materialId',
  ],
  decidedWhen: 'early',
  answeredBy: ['member', 'fabricator'],
  monotone: [],
  check: ({ design: { brief } }): Outcome[] => {
    if (brief.solderedAssembly === null) {
      return [notComputed(['brief', 'solderedAssembly'], 'whether the part is soldered', [BRIEF_PLACE])]
    }
    const given = checkGiven({
      terms: listDryingTerms(brief),
      places: [BRIEF_PLACE],
      whenGiven: 'Drying is given in numbers; the people who set them answer for whether they suit the film.',
      sourceKey: 'ipc1601',
    })
    if (given.kind === 'not-computed') return [given]
    const { drying, bakeDegC, bakeHours, toSolderHours, isDryPacked } = brief.assembly
    if (drying === 'dry-pack' && isDryPacked !== true) {
      if (isDryPacked === null) {
        return [notComputed(['brief', 'assembly', 'isDryPacked'], 'whether it is dry packed', [BRIEF_PLACE], 'typed')]
      }
      return [
        {
          kind: 'said',
          verdict: 'fails',
          rests: 'typed',
          sourceKey: 'ipc1601',
          places: [BRIEF_PLACE],
          summary: 'The part is to stay dry in its pack, and it is not dry packed.',
        },
      ]
    }
    const baked = drying === 'bake'
    return [
      given,
      ...(baked ? beyond('bake temperature', bakeDegC, BAKE_TEMPERATURE_DEGC, 'degC') : []),
      ...(baked ? beyond('bake time', bakeHours, BAKE_HOURS, 'hours') : []),
      ...beyond('time to soldering', toSolderHours, HOURS_TO_SOLDER, 'hours'),
    ]
  },
})

/** What no guide prints is not refused: maker and assembler decide. Nor can it be called right. */
function beyond(
  what: string,
  value: number | null,
  { low, high }: { readonly low: number; readonly high: number },
  unit: 'degC' | 'hours',
): Outcome[] {
  if (value === null || (value >= low && value <= high)) return []
  return [
    cannotTell(
      `a ${what} of ${value}`,
      {
        because: `guides print ${low} to ${high}`,
        decidedBy: 'the film maker and the assembler decide (IPC-1601)',
      },
      [BRIEF_PLACE],
      { value: { value, unit } },
    ),
  ]
}
