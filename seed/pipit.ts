import {
  type Actor,
  acknowledgeDifference,
  chooseProfiles,
  createRevision,
  getPanels,
  getRevision,
  importDesign,
  releaseRevision,
  shareRevision,
  signRevision,
} from '@/lib/data'
import { readStoredDesign } from '@/lib/engine'
import { type Cited, citeNote } from './cite'
import { confirmWhatWasSeen, PIPIT_FIRST_LOOK, PIPIT_INSPECTION } from './inspection'
import type { Workspace } from './people'
import { takeOnActionsOfPipit } from './pipit-actions'
import { PIPIT_DAYS, withPlannedDates } from './planned-dates'
import { PIPIT_ARTWORK, readDesignText } from './read-files'
import { CAST } from './sign-ins'
import { type Answers, type Stage, StoryError } from './stage'
import { uploadArtwork } from './upload'

const makeEarlyAnswers = (cited: Cited): Answers => ({
  'performance-class': ['meets', 'Class 2, type 2, use A; agreed with the product file of the patch.'],
  'tolerances-given': [
    'meets',
    `Two tooling holes of the island as datums; profiles hold in the restrained state; ${citeNote(cited, 'tolerances')} of the drawing.`,
  ],
  'contact-person': ['meets', 'Tomas Ebbersund; Dewi Marrable while he is away.'],
  'radius-holder': ['meets', 'The channel of the housing holds the bend at 6 mm; it cannot be assembled tighter.'],
})

const TEAM_ANSWERS: Answers = {
  'rolling-direction': ['meets', 'The arms lie along the rolling direction; line beside the outline on the drawing.'],
  'construction-cost': ['concern', 'A single-sided circuit with crossovers was quoted 8 % cheaper; not taken.'],
  'registration-features': ['meets', 'Coverlay openings to electrode lands, 0.2 mm all round; nothing finer.'],
  'test-access': [
    'meets',
    'Probes land on the stiffened island and, laid on a plate, on the electrode lands, 60 mm from the bend; none in the bend.',
  ],
  'moisture-sweat': [
    'meets',
    'Coating over the island and its cut edges; section of a coated sample shows it closed round each edge.',
  ],
  'esd-entry': [
    'meets',
    'Clamps beside the amplifier take each electrode line to the driven return before it goes on.',
  ],
  packing: ['meets', 'Trays with lids, dry pack with indicator card.'],
}

const makeFabricatorAnswers = (panel: string): Answers => ({
  'capability-match': ['meets', 'All within our ordinary process; the openings over the electrodes are punched.'],
  'buildable-construction': ['meets', 'Two layers, adhesiveless clad, our standard flow.'],
  'stock-materials': ['meets', 'Clad, coverlay, bonding film and the laminate of the stiffener are on the shelf.'],
  'parts-per-panel': ['meets', panel],
})

const OLD_REGISTRATION = 'Coverlay openings to electrode lands, 0.2 mm all round.'
const OLD_STIFFENER = 'Electronics stiffener'

/** The design as it was before the fabricator asked: without what the answers put into it. */
function makeFirstDraft(designText: string): string {
  const { brief, features, ...rest } = readStoredDesign(designText)
  const stiffeners = features.stiffeners.map((stiffener, index) =>
    index === 0 ? { ...stiffener, name: OLD_STIFFENER } : stiffener,
  )
  return JSON.stringify({
    ...rest,
    brief: { ...brief, registrationCriticalFeatures: OLD_REGISTRATION },
    features: { ...features, stiffeners },
  })
}

/** A quotation is no row of the table of steps: quality says why the two may differ. */
async function letQuotationStand({ carryOut }: Stage, quality: Actor, revisionId: string): Promise<void> {
  const { signOff } = await getRevision(quality, revisionId)
  for (const { key, fact } of signOff.differences.filter(({ fact }) => fact.startsWith('Cost'))) {
    await carryOut(`let stand: ${fact}`, async () =>
      acknowledgeDifference(quality, {
        revisionId,
        seenVersion: (await getRevision(quality, revisionId)).version,
        key,
        reason: 'The 8 % is a quotation for a single-sided circuit, which is none of the constructions compared here.',
      }),
    )
  }
}

/** What the panels page says of the fabricator's own panels, in a sentence. */
async function describePanel(actor: Actor, revisionId: string): Promise<string> {
  const [own] = (await getPanels(actor, revisionId)).fabricators
  if (own?.estimate.ok !== true) throw new StoryError('the fabricator keeps no panel formats')
  const { nested, part } = own.estimate
  const priced = nested.find(({ format }) => format.id === own.pricedFormatId) ?? nested[0]
  if (priced === undefined) throw new StoryError('no panel holds the part')
  const { format, nesting } = priced
  return `${nesting.count} parts on the ${format.name.toLowerCase()} of ${format.widthMm} mm × ${format.heightMm} mm, ${part.array === undefined ? 'islands and arms interlocked' : `in arrays of ${part.array.parts.length}`}.`
}

/** Pipit, revision A: the whole way to a released package. */
export async function playPipit(stage: Stage, { people, pipitId, companies }: Workspace): Promise<string> {
  const { clock, carryOut } = stage
  const { mechanical, designer, lead, quality, ostrel } = people
  clock.goTo(112, 8)
  await carryOut('ask of Pipit what is asked of wearables', () =>
    chooseProfiles(lead, {
      projectId: pipitId,
      seenVersion: 0,
      profileIds: ['wearable-on-skin'],
      reason: 'The patch is worn on the chest for days. It measures for training and makes no medical claim.',
    }),
  )
  clock.goTo(112, 9)
  const { revisionId } = await carryOut('create Pipit A', () =>
    createRevision(mechanical, {
      projectId: pipitId,
      label: 'A',
      origin: {
        kind: 'import',
        designText: makeFirstDraft(withPlannedDates(readDesignText('pipit-rev-a'), clock, PIPIT_DAYS)),
      },
    }),
  )
  await stage.open(mechanical, {
    revisionId,
    anchor: { kind: 'zone', id: 'arms' },
    kind: 'note',
    title: 'Housing channel is frozen',
    text: 'The channel that holds the bend left tooling with a 6 mm wall radius. It will not change before the first build.',
  })
  await stage.advance(lead, revisionId, 'Complete enough for a first look.')

  clock.goTo(106, 10)
  await stage.answer(mechanical, revisionId, makeEarlyAnswers(await getRevision(mechanical, revisionId)))
  await confirmWhatWasSeen(stage, {
    revisionId,
    actor: mechanical,
    fileName: 'pipit-motion.txt',
    title: 'Motion of the Pipit patch, as seen on its model',
    inspection: PIPIT_FIRST_LOOK,
  })
  await carryOut('share Pipit A', () => shareRevision(lead, { revisionId, companyId: companies.ostrel }))
  await stage.advance(lead, revisionId)

  clock.goTo(99, 13)
  const query = await stage.open(ostrel, {
    revisionId,
    anchor: { kind: 'item', id: 'coverlay-opening' },
    kind: 'engineering-query',
    title: 'May the electrode openings have rounded corners?',
    text: 'Our punch leaves 0.1 mm corner radius in the coverlay openings. Square corners would need a second tool. Is 0.1 mm acceptable on all three electrodes?',
  })
  const change = await stage.open(ostrel, {
    revisionId,
    anchor: { kind: 'layer', id: 'stiffener' },
    kind: 'should-change',
    title: 'Round the stiffener corners at the arm',
    text: 'The edge is square to the arm. Rounded corners of 1 mm there would spare the coverlay in handling.',
  })
  clock.goTo(97, 9)
  const { designVersion } = await getRevision(mechanical, revisionId)
  await carryOut('put the answers into the design of Pipit A', () =>
    importDesign(mechanical, {
      revisionId,
      seenVersion: designVersion,
      designText: withPlannedDates(readDesignText('pipit-rev-a'), clock, PIPIT_DAYS),
    }),
  )
  const cornerNote = citeNote(await getRevision(mechanical, revisionId), 'registration')
  await stage.reply(
    mechanical,
    query,
    `Yes, up to 0.15 mm. ${cornerNote.replace('the', 'The')} of the drawing now says so.`,
    true,
  )
  await stage.reply(mechanical, change, 'Taken over: S1 on the drawing has 1 mm corners, same material.', true)
  await stage.reply(ostrel, query, 'Thank you, that settles it.')
  await stage.close(ostrel, {
    revisionId,
    threadId: query,
    reason: 'Corners up to 0.15 mm are allowed, and the drawing says so.',
    changed: 'registration',
  })

  clock.goTo(92, 9)
  await uploadArtwork(stage, designer, revisionId, PIPIT_ARTWORK)
  await stage.answer(ostrel, revisionId, makeFabricatorAnswers(await describePanel(ostrel, revisionId)))
  await stage.answer(mechanical, revisionId, TEAM_ANSWERS)
  await answerWhatIsLeft(stage, mechanical, revisionId, cornerNote)
  await confirmWhatWasSeen(stage, {
    revisionId,
    actor: mechanical,
    fileName: 'pipit-layout-inspection.txt',
    title: 'Layout inspection of the Pipit patch, revision A',
    inspection: PIPIT_INSPECTION,
  })
  await stage.waive({
    revisionId,
    itemId: 'construction-cost',
    proposedBy: mechanical,
    reason: 'The crossovers of a single-sided circuit would cost more at assembly than the 8 % saved on the part.',
    decision: {
      by: lead,
      decision: 'approve',
      reason: 'Seen with purchasing; the sum holds from 10,000 parts a year.',
    },
  })
  await stage.declare(ostrel, revisionId)
  await stage.advance(lead, revisionId)

  clock.goTo(86, 14)
  const note = await stage.open(quality, {
    revisionId,
    anchor: { kind: 'bend', id: 'install-bend' },
    kind: 'note',
    title: 'Bend test of the first articles',
    text: 'Ten first articles go round the housing five times each before they are measured. That is beyond use, on purpose.',
  })
  await stage.reply(lead, note, 'Agreed. Please keep two of them unbent for comparison.')
  await takeOnActionsOfPipit(stage, { people, revisionId, threadId: note })
  await stage.review(
    quality,
    revisionId,
    'Drawing against the artwork, every item that is not computed, and the waiver with purchasing’s figures.',
  )
  await letQuotationStand(stage, quality, revisionId)
  const view = await getRevision(lead, revisionId)
  await carryOut('sign Pipit A', () =>
    signRevision(lead, {
      revisionId,
      seenVersion: view.version,
      contentHash: view.contentHash,
      capacity: 'lead engineer',
      statement: view.statement,
      password: CAST.lead.password,
    }),
  )
  const { version } = await getRevision(lead, revisionId)
  await carryOut('release Pipit A', () =>
    releaseRevision(lead, {
      revisionId,
      seenVersion: version,
      password: CAST.lead.password,
      purpose: 'first-articles',
      changeNumber: 'QI-0207',
      reason: 'First issue of the part.',
      effectivity: 'first lot',
    }),
  )
  return revisionId
}

/** Items whose verdict depends on what happened so far, such as how long ago the fabricator looked. */
async function answerWhatIsLeft(stage: Stage, actor: Actor, revisionId: string, cornerNote: string) {
  const { items } = await getRevision(actor, revisionId)
  const reasons: Readonly<Record<string, string>> = {
    'fabricator-currency': 'Ostrel looked at this very design; nothing has changed in it since.',
    'engineering-queries': `One query, answered; ${cornerNote} carries the answer.`,
  }
  for (const [itemId, reason] of Object.entries(reasons)) {
    const item = items.find((candidate) => candidate.itemId === itemId)
    if (item?.state === 'open') await stage.answer(actor, revisionId, { [itemId]: ['meets', reason] })
  }
}
