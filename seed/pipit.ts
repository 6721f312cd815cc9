import { addArtwork, createRevision, getRevision, releaseRevision, shareRevision, signRevision } from '@/lib/data'
import type { Workspace } from './people'
import { readArtwork, readDesignText } from './read-files'
import { CAST } from './sign-ins'
import type { Answers, Stage } from './stage'

const EARLY_ANSWERS: Answers = {
  'bake-before-assembly': [
    'meets',
    'Sealed packs are used within a shift, else dried at the profile that the finish maker allows; on the drawing, note 7.',
  ],
  'performance-class': ['meets', 'Class 2, type 2, use A; agreed with the product file of the patch.'],
  'tolerance-scheme': ['meets', 'Two tooling holes of the island as datums; profiles hold in the restrained state.'],
  'contact-person': ['meets', 'Tomas Ebbersund; Dewi Marrable while he is away.'],
  'radius-holder': ['meets', 'The channel of the housing holds the bend at 6 mm; it cannot be assembled tighter.'],
}

const TEAM_ANSWERS: Answers = {
  'rolling-direction': ['meets', 'The arms lie along the rolling direction; arrow on the drawing.'],
  'artwork-agreement': ['meets', 'Profile and drill file laid over the drawing: two layers, same outline, same holes.'],
  'construction-cost': ['concern', 'A single-sided circuit with crossovers was quoted 8 % cheaper; not taken.'],
  'registration-features': ['meets', 'Coverlay openings to electrode lands, 0.2 mm all round; nothing finer.'],
  packing: ['meets', 'Trays with lids, dry pack with indicator card.'],
}

const FABRICATOR_ANSWERS: Answers = {
  'capability-match': ['meets', 'All within our ordinary process; the opening over the electrodes is laser cut.'],
  'buildable-construction': ['meets', 'Two layers, adhesiveless clad, our standard flow.'],
  'stock-materials': ['meets', 'Clad and coverlay are on the shelf; stiffener film two weeks.'],
  'parts-per-panel': ['meets', '42 parts on a 305 mm x 457 mm panel, arms nested in pairs.'],
}

/** Pipit, revision A: the whole way to a released package. */
export async function playPipit(stage: Stage, { people, pipitId, companies }: Workspace): Promise<void> {
  const { clock, carryOut } = stage
  const { mechanical, designer, lead, quality, ostrel } = people
  clock.goTo(112, 9)
  const { revisionId } = await carryOut('create Pipit A', () =>
    createRevision(mechanical, {
      projectId: pipitId,
      label: 'A',
      origin: { kind: 'import', designText: readDesignText('pipit-rev-a') },
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
  await stage.answer(mechanical, revisionId, EARLY_ANSWERS)
  await carryOut('share Pipit A', () => shareRevision(lead, { revisionId, companyId: companies.ostrel }))
  await stage.advance(lead, revisionId)

  clock.goTo(99, 13)
  const query = await stage.open(ostrel, {
    revisionId,
    anchor: { kind: 'item', id: 'coverlay-opening' },
    kind: 'engineering-query',
    title: 'May the electrode openings have rounded corners?',
    text: 'Our laser leaves 0.1 mm corner radius in the coverlay openings. Square corners would be an extra pass. Is 0.1 mm acceptable on all three electrodes?',
  })
  const change = await stage.open(ostrel, {
    revisionId,
    anchor: { kind: 'layer', id: 'stiffener' },
    kind: 'should-change',
    title: 'Pull the stiffener edge back from the arms',
    text: 'The edge is square to the arms. A rounded corner of 1 mm at each arm would spare the coverlay in handling.',
  })
  clock.goTo(97, 9)
  await stage.reply(mechanical, query, 'Yes, up to 0.15 mm. Note 11 of the drawing now says so.', true)
  await stage.reply(mechanical, change, 'Taken over: 1 mm corners on the stiffener drawing, same material.', true)
  await stage.reply(ostrel, query, 'Thank you, that settles it.')

  clock.goTo(92, 9)
  await carryOut('upload the profile', () =>
    addArtwork(designer, { revisionId, fileName: 'pipit-profile.gbr', bytes: readArtwork('pipit-profile.gbr') }),
  )
  await carryOut('upload the drill file', () =>
    addArtwork(designer, { revisionId, fileName: 'pipit-drill.drl', bytes: readArtwork('pipit-drill.drl') }),
  )
  await stage.answer(ostrel, revisionId, FABRICATOR_ANSWERS)
  await stage.answer(mechanical, revisionId, TEAM_ANSWERS)
  await answerWhatIsLeft(stage, mechanical, revisionId)
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
  await stage.declare(ostrel, revisionId, 'Buildable as drawn, with corner radii of note 11.')
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
  await carryOut('release Pipit A', () => releaseRevision(lead, { revisionId, seenVersion: version }))
}

/** Items whose verdict depends on what happened so far, such as how long ago the fabricator looked. */
async function answerWhatIsLeft(stage: Stage, actor: Workspace['people']['mechanical'], revisionId: string) {
  const { items } = await getRevision(actor, revisionId)
  const reasons: Readonly<Record<string, string>> = {
    'fabricator-currency': 'Ostrel looked at this very design; nothing has changed in it since.',
    'engineering-queries': 'One query, answered; note 11 carries the answer.',
  }
  for (const [itemId, reason] of Object.entries(reasons)) {
    const item = items.find((candidate) => candidate.itemId === itemId)
    if (item?.state === 'open') await stage.answer(actor, revisionId, { [itemId]: ['meets', reason] })
  }
}
