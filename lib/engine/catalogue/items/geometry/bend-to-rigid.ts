import { listBends } from '../../checks'
import { decide, notComputed } from '../../decide'
import { defineItem } from '../../define-item'

export const bendToRigid = defineItem({
  id: 'bend-to-rigid',
  section: 'geometry',
  severity: 'major',
  question: 'Is each bend kept clear of the rigid edge?',
  titles: { meets: 'Bends are clear of rigid edges', fails: 'A bend starts too near a rigid edge' },
  appliesTo: { needs: ['bends', 'transitions'], says: 'parts that bend beside a rigid or stiffened zone' },
  limits: ['bendToRigidMm'],
  sourceKeys: ['guideRigidFlex2023'],
  restsOn: ['bends'],
  decidedWhen: 'early',
  answeredBy: ['member'],
  monotone: [{ path: 'bends[].distanceToRigidMm', worse: 'smaller' }],
  check: (context) => {
    const limit = context.getLimit('bendToRigidMm')
    return listBends(context).map(({ bend, index, place }) =>
      bend.distanceToRigidMm === null
        ? notComputed(['bends', index, 'distanceToRigidMm'], `distance of bend ${bend.name} from a rigid edge`, [place])
        : decide({
            value: bend.distanceToRigidMm,
            limit,
            places: [place],
            what: `bend ${bend.name} to the rigid edge`,
            equation: 'distance in the flat',
            isTyped: true,
          }),
    )
  },
})
