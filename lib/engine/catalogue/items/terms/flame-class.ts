import { defineItem } from '../../define-item'
import { askFor, checkSeen, findUnstated, makeTermOutcome } from '../../terms'

export const flameClass = defineItem({
  id: 'flame-class',
  section: 'materials',
  severity: 'major',
  question: 'Which flame class must the construction have, and does the fabricator hold it for this very construction?',
  titles: { meets: 'The flame class is settled', fails: 'The flame class is not held' },
  appliesTo: { needs: ['layers'], says: 'every design' },
  limits: [],
  sourceKeys: ['flameTest', 'flameFlexible', 'ipc6013'],
  restsOn: [
    'brief.acceptance.flameClass',
    'brief.acceptance.flameClassHeld',
    'brief.installationUses',
    'construction.layers',
    'construction.zones',
    'materials',
  ],
  decidedWhen: 'early',
  answeredBy: ['lead', 'fabricator'],
  monotone: [{ path: 'brief.acceptance.flameClassHeld', worse: 'no' }],
  check: (context) => {
    const { acceptance, installationUses } = context.design.brief
    const missing = findUnstated(context, 'acceptance', ['flameClass'])
    if (missing.length > 0) return askFor(missing)
    if (acceptance.flameClass !== 'not-asked') {
      return [
        checkSeen(context, 'acceptance', 'flameClassHeld', {
          whenRight: 'The fabricator holds the class for this construction.',
          whenWrong: 'The fabricator does not hold the class for this construction.',
          sourceKey: 'flameFlexible',
        }),
      ]
    }
    if (installationUses.length === 0) {
      return askFor([{ path: ['brief', 'installationUses'], label: 'installation uses' }])
    }
    return [
      installationUses.includes('use-d')
        ? makeTermOutcome(
            'fails',
            'Use D asks for a recognised flammability rating, and no class is asked for.',
            'ipc6013',
          )
        : makeTermOutcome('meets', 'No flame class is asked for.', 'ipc6013'),
    ]
  },
})
