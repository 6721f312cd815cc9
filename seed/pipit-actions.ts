import { attachFile, closeAction, getRevision, reportAction, takeOnAction } from '@/lib/data'
import type { TakeOnActionInput } from '@/lib/inputs'
import type { People, Workspace } from './people'
import { toBytes } from './read-files'
import { type Stage, StoryError } from './stage'

const BEND_TEST = 'Bend ten first articles round the housing five times each and measure them; keep two unbent.'
const MEASURED = `Pipit patch, revision A: first articles

Ten parts went five times each round the housing, then through electrical test; two were kept unbent.
Bent: ten of ten without an open; resistance of the longest arm 1.24 to 1.28 ohm at 23 °C.
Unbent: 1.24 and 1.25 ohm.
Radius of the housing channel on five mouldings: 6.0 to 6.1 mm.
`

interface PipitActions {
  readonly people: People
  readonly revisionId: string
  /** Where the bend test was agreed. */
  readonly threadId: string
}

/** What is left to be done once Pipit A is released. */
export async function takeOnActionsOfPipit(stage: Stage, { people, revisionId, threadId }: PipitActions) {
  const { carryOut, clock } = stage
  const takeOn = (action: Omit<TakeOnActionInput, 'revisionId' | 'requestKey'>) =>
    carryOut(`take on "${action.text}"`, () => takeOnAction(people.lead, { revisionId, ...action }))
  await takeOn({
    origin: { kind: 'thread', id: threadId },
    text: BEND_TEST,
    ownerId: people.quality.userId,
    due: 'before-series',
    dueOn: clock.day(28),
  })
  await takeOn({
    origin: { kind: 'revision', id: '' },
    text: 'Put the corner radius of the second punch on the inspection sheet of the series.',
    ownerId: people.mechanical.userId,
    due: 'before-series',
    dueOn: clock.day(8),
  })
}

/** First articles are measured weeks after the release: the result stands beside it and changes nothing that was signed. */
export async function bringResultsBack(stage: Stage, { people }: Workspace, revisionId: string): Promise<void> {
  const { carryOut, clock } = stage
  const { quality, lead } = people
  clock.goTo(31, 14)
  const find = async () => {
    const action = (await getRevision(lead, revisionId)).actions.find(({ text }) => text === BEND_TEST)
    if (action === undefined) throw new StoryError('nobody took on the bend test')
    return action
  }
  const { id: actionId } = await find()
  await carryOut('attach the measurements', () =>
    attachFile(quality, {
      revisionId,
      target: { kind: 'action', actionId },
      fileName: 'pipit-a-first-articles.txt',
      bytes: toBytes(MEASURED),
    }),
  )
  await carryOut('report the bend test done', async () =>
    reportAction(quality, {
      actionId,
      seenVersion: (await find()).version,
      evidence: 'Ten of ten without an open after five turns round the housing; two kept unbent for comparison.',
    }),
  )
  await carryOut('close the bend test', async () =>
    closeAction(lead, {
      actionId,
      seenVersion: (await find()).version,
      reason: 'Read the record; the spread is that of the meter.',
    }),
  )
}
