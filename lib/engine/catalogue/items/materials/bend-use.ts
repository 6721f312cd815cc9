import { inSentence } from '../../../units'
import { listBends } from '../../checks'
import { decide, makeNoneAllowed, notComputed } from '../../decide'
import { defineItem } from '../../define-item'
import { isUseContradicted } from '../../stated-cycles'

export const bendUse = defineItem({
  id: 'bend-use',
  section: 'materials',
  severity: 'major',
  question: 'Is each bend stated as folded once, flexed to install or dynamic, in line with the installation use?',
  titles: {
    meets: 'Every bend has a use that fits the part',
    fails: 'A bend moves more than the installation use says',
  },
  appliesTo: { needs: ['bends'], says: 'designs with a bend' },
  limits: [],
  sourceKeys: ['ipc6013'],
  restsOn: ['bends.*.use', 'bends.*.motion', 'brief.installationUse'],
  decidedWhen: 'early',
  answeredBy: ['member', 'lead'],
  monotone: [],
  check: (context) =>
    listBends(context).map(({ bend, index, place }) => {
      const { installationUse } = context.design.brief
      if (bend.use === null) return notComputed(['bends', index, 'use'], `use of bend ${bend.name}`, [place])
      if (bend.use === 'dynamic' && bend.requiredCycles === null) {
        return notComputed(['bends', index, 'requiredCycles'], `required cycles of bend ${bend.name}`, [place])
      }
      if (bend.use === 'dynamic' && installationUse === null) {
        return notComputed(['brief', 'installationUse'], 'installation use of the part', [place])
      }
      const isUseA = bend.use === 'dynamic' && installationUse === 'use-a'
      const isAskedForMore = isUseContradicted(bend)
      return decide({
        value: isUseA || isAskedForMore ? 1 : 0,
        limit: makeNoneAllowed('useContradictionsCount', 'ipc6013'),
        places: [place],
        what: `contradictions between bend ${bend.name} and the installation use`,
        equation: 'stated use against installation use A to D and the cycles asked for',
        remark: isUseA
          ? 'Use A covers flexing during installation only; continuous flexing is use B.'
          : isAskedForMore
            ? `${inSentence(bend.requiredCycles ?? 0, 'cycles')} are more than a bend that stands still in service goes through: state it as dynamic, or take the cycles out.`
            : undefined,
      })
    }),
})
