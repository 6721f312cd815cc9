import { now } from '@/lib/config'
import {
  createRevision,
  decideCondition,
  getRevision,
  importDesign,
  proposeChange,
  recordMeeting,
  shareRevision,
  stateNeed,
} from '@/lib/data'
import { type Cited, citeNote } from './cite'
import { confirmWhatWasSeen, SKUA_FIRST_LOOK, SKUA_INSPECTION } from './inspection'
import type { Workspace } from './people'
import { SKUA_B_DAYS, withPlannedDates } from './planned-dates'
import { readDesignText, SKUA_ARTWORK } from './read-files'
import { type Answers, type Stage, StoryError } from './stage'
import { uploadArtwork } from './upload'

const makeEarlyAnswers = (cited: Cited): Answers => ({
  'performance-class': ['meets', 'Class 3, type 4, uses A and B: the link is folded once, the hinge moves unattended.'],
  'tolerances-given': [
    'meets',
    `Datums on board holes and finger edge; flexible profiles in the restrained state; ${citeNote(cited, 'tolerances')} of the drawing.`,
  ],
  'contact-person': ['meets', 'Ines Vantongeren for the circuit, Tomas Ebbersund for the hinge.'],
  'radius-holder': [
    'meets',
    'The former of the split mirror mount holds the hinge at 17 mm; its drawing states the radius as critical. The channel of the optics block holds the fold.',
  ],
  'copper-yield': [
    'concern',
    'Holds at nominal; with the softest foil and the stiffest films that their descriptions allow the strain just passes yield. Watched by the flex test.',
  ],
})

const BEAD = ' A bead of flexible epoxy, 1 mm wide, along both board edges.'

/** The design as it was before the fabricator asked for one bead material. */
const withoutBead = (designText: string): string =>
  designText.replace(BEAD, '').replace('"bead": "called-out"', '"bead": null')

const FABRICATOR_ANSWERS: Answers = {
  'capability-match': ['meets', 'Pads-only plating and 0.12 mm conductors are ordinary work on this foil.'],
  'buildable-construction': ['meets', 'Four layers, flex inside: our usual lay-up with no-flow prepreg.'],
  'stock-materials': [
    'concern',
    '12 µm rolled-annealed adhesiveless clad is not on the shelf: six weeks from order. The lower coverlay is coated to order and takes longest.',
  ],
  'rolling-direction-moving': ['meets', 'Hinge along the rolling direction: our panels are laid that way.'],
}

const TEAM_ANSWERS: Answers = {
  'registration-features': ['meets', 'Finger contacts to finger edge; coverlay edge to contacts. Both on the drawing.'],
  'test-access': ['meets', 'Probes land on the two boards and the finger; none on hinge or link.'],
  packing: ['meets', 'Flat between boards, dry pack, held by the boards only.'],
}

const NEEDS = [
  {
    text: 'The hinge bears two million cycles at 17 mm in its former.',
    itemIds: ['fatigue-life', 'radius-holder'],
    method: 'test',
  },
  { text: 'Every net of finger, hinge and link can be probed.', itemIds: ['test-access'], method: 'inspection' },
] as const

/** Skua, revision B: most of the way through the fabricators' review; one query is open. */
export async function playSkuaSecond(
  stage: Stage,
  { people, skuaId, companies }: Workspace,
  firstRevisionId: string,
): Promise<void> {
  const { clock, carryOut } = stage
  const { designer, mechanical, lead, quality, brackenfold, ostrel } = people
  clock.goTo(29, 9)
  const { revisionId } = await carryOut('create Skua B', () =>
    createRevision(designer, {
      projectId: skuaId,
      label: 'B',
      origin: { kind: 'copy', revisionId: firstRevisionId },
    }),
  )
  clock.goTo(24, 15)
  // Plots of the earlier layout came in late, and belong to the revision that they were made for.
  await uploadArtwork(stage, designer, firstRevisionId, SKUA_ARTWORK)
  const { designVersion } = await getRevision(designer, revisionId)
  await carryOut('import the design of B', () =>
    importDesign(designer, {
      revisionId,
      seenVersion: designVersion,
      designText: withoutBead(withPlannedDates(readDesignText('skua-rev-b'), clock, SKUA_B_DAYS)),
    }),
  )
  await stage.open(designer, {
    revisionId,
    anchor: { kind: 'layer', id: 'l2' },
    kind: 'note',
    title: 'What changed against revision A',
    text: 'One 12 µm rolled-annealed layer through the hinge, pads-only plating, an upper coverlay of 12.5 µm and wider conductors so that the copper lies near the neutral axis, and 17 mm instead of 8 mm, since the mount is split. The strain now holds at the worst corner of tolerances and material constants. The shield layer ends at the boards.',
  })
  await stage.advance(lead, revisionId, 'The numbers of the hinge hold. Early review of the rest.')

  clock.goTo(21, 10)
  await stage.answer(designer, revisionId, makeEarlyAnswers(await getRevision(designer, revisionId)))
  await confirmWhatWasSeen(stage, {
    revisionId,
    actor: designer,
    fileName: 'skua-motion.txt',
    title: 'Motion of the Skua scan head, as seen on its model',
    inspection: SKUA_FIRST_LOOK,
  })
  const former = await stage.open(quality, {
    revisionId,
    anchor: { kind: 'item', id: 'radius-holder' },
    kind: 'should-change',
    title: 'What stops the hinge from folding tighter during assembly?',
    text: 'The former holds it in use. On the bench, before the mount is closed, nothing does. Is there a clip or a note?',
  })
  await stage.reply(mechanical, former, 'A clip of 17 mm radius ships with each circuit and comes off last.', true)
  for (const companyId of [companies.brackenfold, companies.ostrel]) {
    await carryOut('share Skua B', () => shareRevision(lead, { revisionId, companyId }))
  }
  await stage.advance(lead, revisionId)

  clock.goTo(16, 9)
  const relief = await stage.open(brackenfold, {
    revisionId,
    anchor: { kind: 'zone', id: 'hinge' },
    kind: 'must-change',
    title: 'Strain relief at both board edges must be on the drawing',
    text: 'The drawing’s note on the hinge says what it runs over and nothing of a bead. We need one bead material for both edges.',
  })
  const clad = await stage.open(brackenfold, {
    revisionId,
    anchor: { kind: 'item', id: 'stock-materials' },
    kind: 'engineering-query',
    title: 'Is 18 µm foil a fallback?',
    text: 'The 12 µm clad takes six weeks. Should it slip, would 18 µm rolled-annealed foil, thinned evenly, be acceptable?',
  })
  await stage.answer(brackenfold, revisionId, FABRICATOR_ANSWERS)
  await stage.waive({
    revisionId,
    itemId: 'stock-materials',
    proposedBy: designer,
    reason: 'Six weeks for the clad fit the need date if it is ordered at release; the lower coverlay is ordered now.',
    decision: { by: lead, decision: 'approve', reason: 'Purchasing orders on the day of release.' },
  })
  await stage.waive({
    revisionId,
    itemId: 'parts-per-panel',
    proposedBy: designer,
    reason: 'The L of the part leaves half of its array empty; the assembler’s line takes arrays alone.',
    decision: { by: lead, decision: 'approve', reason: 'Known since the first sketch: the quantity is small.' },
  })

  clock.goTo(13, 10)
  const before = await getRevision(designer, revisionId)
  await carryOut('put the bead into the design of Skua B', () =>
    importDesign(designer, {
      revisionId,
      seenVersion: before.designVersion,
      designText: withPlannedDates(readDesignText('skua-rev-b'), clock, SKUA_B_DAYS),
    }),
  )
  const hingeNote = citeNote(await getRevision(designer, revisionId), 'bend-hinge')
  await stage.reply(designer, relief, `Flexible epoxy bead, 1 mm wide, both edges; now in ${hingeNote}.`, true)
  await stage.close(lead, {
    revisionId,
    threadId: relief,
    reason: 'One bead material for both edges is on the drawing.',
    changed: 'bead',
  })
  await stage.reply(
    mechanical,
    clad,
    'No. At 18 µm the strain holds at nominal and goes past the allowable for two million cycles at the worst corner of tolerances and material constants. Please order the 12 µm clad.',
    true,
  )
  await stage.answer(designer, revisionId, TEAM_ANSWERS)
  await confirmWhatWasSeen(stage, {
    revisionId,
    actor: designer,
    fileName: 'skua-layout-inspection.txt',
    title: 'Layout inspection of the Skua scan head, revision B',
    inspection: SKUA_INSPECTION,
  })

  clock.goTo(9, 11)
  await stage.reply(brackenfold, clad, 'Understood, 12 µm only.')
  await stage.declare(brackenfold, revisionId, [
    'The 12 µm clad is ordered on the day of release: first articles take eight weeks from then.',
  ])
  const [declaration] = (await getRevision(lead, revisionId)).declarations
  const [condition] = declaration?.conditions ?? []
  if (condition === undefined) throw new StoryError('the condition on the clad is missing')
  await carryOut('make the order of the clad an action', () =>
    decideCondition(lead, {
      conditionId: condition.id,
      seenVersion: condition.version,
      decision: 'action',
      reason: '',
      action: {
        text: 'Order the 12 µm clad on the day of release and send Brackenfold the order’s date.',
        ownerId: designer.userId,
        due: 'before-first-article',
        dueOn: '',
      },
    }),
  )

  clock.goTo(8, 11)
  await carryOut('record the review meeting of Skua B', () =>
    recordMeeting(lead, {
      revisionId,
      title: 'Manufacturing review of the scan head',
      heldOn: now().toISOString().slice(0, 10),
      agenda: 'The condition on the clad. What holds the hinge on the bench. Flex test before series.',
      people: [
        ...[lead, designer, mechanical, brackenfold].map(({ userId }) => ({ userId, attendance: 'present' as const })),
        { userId: quality.userId, attendance: 'excused' as const },
      ],
      decisions: [
        {
          text: 'The clip that ships with each circuit holds the radius until the mount is closed.',
          points: `thread ${former}`,
        },
        {
          text: 'Ten hinges are flexed to 2.4 million cycles before series.',
          points: 'action',
          action: { ownerId: mechanical.userId, due: 'before-series', dueOn: '' },
        },
      ],
    }),
  )
  for (const need of NEEDS) {
    await carryOut(`state "${need.text}"`, () =>
      stateNeed(designer, { revisionId, plannedOn: '', ...need, itemIds: [...need.itemIds] }),
    )
  }

  clock.goTo(7, 10)
  const seen = await getRevision(brackenfold, revisionId)
  const outlineCorners = seen.design.features.outlineCorners.map((corner) =>
    corner.id === 'link-corner' ? { ...corner, insideRadiusMm: 1.5 } : corner,
  )
  await carryOut('propose a change of Skua B', () =>
    proposeChange(brackenfold, {
      revisionId,
      seenVersion: seen.designVersion,
      design: { ...seen.design, features: { ...seen.design.features, outlineCorners } },
      title: 'Corner of the link at 1.5 mm, as at the hinge',
      why: 'One cutter then does the whole outline in one pass; at 1 mm we change tools for this corner alone.',
      kind: 'note',
    }),
  )

  clock.goTo(5, 14)
  await stage.open(ostrel, {
    revisionId,
    anchor: { kind: 'zone', id: 'finger' },
    kind: 'engineering-query',
    title: 'Plating sequence of the finger contacts',
    text: 'With pads-only plating the finger contacts are plated in a second step. Do the contacts need hard gold over the whole insertion length, or over the contact line only?',
  })
  const edge = await stage.open(ostrel, {
    revisionId,
    anchor: { kind: 'item', id: 'registration-features' },
    kind: 'should-change',
    title: 'Finger edge by laser rather than by punch',
    text: 'Contacts to edge of ±0.05 mm is at the end of what our punch holds. By laser it is ordinary.',
  })
  clock.goTo(2, 9)
  await stage.reply(
    designer,
    edge,
    'The outline is stated as cut by laser, for prototype and series. Which figure do you hold with it?',
  )
}
