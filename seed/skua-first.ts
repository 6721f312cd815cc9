import { attachFile, createRevision, getRevision, saveDesign, shareRevision } from '@/lib/data'
import type { Workspace } from './people'
import { SKUA_A_DAYS, withPlannedDates } from './planned-dates'
import { readDesignText, toBytes } from './read-files'
import type { Answers, Stage } from './stage'

const FIRST_ANSWERS: Answers = {
  'contact-person': ['meets', 'Ines Vantongeren for the circuit, Tomas Ebbersund for the hinge.'],
  'performance-class': ['meets', 'Class 3, type 4, use B: the head runs unattended.'],
  'fatigue-life': [
    'concern',
    'Two plated layers at 8 mm. No radius is known at which plated copper lasts as long: the copper has to change first, and the mirror mount with it if that is not enough.',
  ],
  'fitted-thickness': [
    'concern',
    'The adhesive takes most of the spread; a thinner one is tried in the next revision.',
  ],
  'coupon-test': ['concern', 'Not asked for yet; goes into the drawing notes together with the fold test.'],
}

/** Skua, revision A: sent back once, in early review again, with trouble that changes its construction. */
export async function playSkuaFirst(stage: Stage, { people, skuaId, companies }: Workspace): Promise<string> {
  const { clock, carryOut } = stage
  const { designer, mechanical, lead, quality, brackenfold } = people
  clock.goTo(47, 9)
  const { revisionId } = await carryOut('create Skua A', () =>
    createRevision(designer, {
      projectId: skuaId,
      label: 'A',
      origin: { kind: 'import', designText: withPlannedDates(readDesignText('skua-rev-a'), clock, SKUA_A_DAYS) },
    }),
  )
  const hinge = await stage.open(designer, {
    revisionId,
    anchor: { kind: 'bend', id: 'hinge' },
    kind: 'note',
    title: 'Where the hinge stands',
    text: 'Taken over from the bench model, which did some thousands of sweeps. Two million one-way cycles are asked for. I expect trouble here and would like everybody to look early.',
  })
  await stage.advance(lead, revisionId, 'Early on purpose: layout has not begun.')

  clock.goTo(44, 10)
  await stage.reply(
    mechanical,
    hinge,
    'The former holds 8 mm; the mirror mount is in the way of more. A split mount could take 17 mm, for a new casting. Tell me whether the copper alone does not do it.',
  )
  await stage.open(quality, {
    revisionId,
    anchor: { kind: 'item', id: 'layer-names' },
    kind: 'must-change',
    title: 'Layer names do not say what the layers are',
    text: '"Layer 3", "PI 1" and two "Adhesive" lines: nobody at the fabricator can quote this without asking. Name each layer by its number, place and use.',
  })
  await stage.sendBack(
    lead,
    revisionId,
    'The brief lacks who bends the circuit in use, and where it is held. Complete both, then we look at numbers.',
  )

  clock.goTo(41, 9)
  const { design, designVersion } = await getRevision(designer, revisionId)
  const purpose = `${design.brief.purpose} The hinge moves with the mirror, driven by its motor; nobody bends it by hand after assembly.`
  await carryOut('complete the brief', () =>
    saveDesign(designer, {
      revisionId,
      seenVersion: designVersion,
      design: { ...design, brief: { ...design.brief, purpose } },
    }),
  )
  await stage.advance(lead, revisionId, 'Brief completed.')
  await carryOut('share Skua A', () => shareRevision(lead, { revisionId, companyId: companies.brackenfold }))

  clock.goTo(38, 11)
  await stage.answer(designer, revisionId, FIRST_ANSWERS)
  await carryOut('attach a note on the bench model', () =>
    attachFile(designer, {
      revisionId,
      target: { kind: 'item', itemId: 'fatigue-life' },
      fileName: 'bench-model-notes.txt',
      bytes: toBytes(BENCH_NOTES),
    }),
  )
  await stage.waive({
    revisionId,
    itemId: 'opening-to-bend',
    proposedBy: designer,
    reason: 'The nickel near the fold is on test points that are bent once; a crack there would not matter.',
    decision: {
      by: lead,
      decision: 'decline',
      reason: 'A crack can run on into the supply conductor beside it. Move the test points instead.',
    },
  })

  clock.goTo(35, 13)
  const plating = await stage.open(brackenfold, {
    revisionId,
    anchor: { kind: 'bend', id: 'hinge' },
    kind: 'should-change',
    title: 'One thin layer through the hinge instead of two plated ones',
    text: 'Panel plating puts 25 µm of electrodeposited copper on both hinge layers. We can plate the pads only, and 12 µm rolled-annealed clad is no dearer. Can the returns leave the hinge?',
  })
  await stage.open(brackenfold, {
    revisionId,
    anchor: { kind: 'zone', id: 'finger' },
    kind: 'engineering-query',
    title: 'Which thickness counts for the finger?',
    text: 'The layers add up to about 341 µm, the drawing states another figure, and the connector takes 300 µm. Which of them do we build to?',
  })
  clock.goTo(33, 9)
  await stage.reply(
    designer,
    plating,
    'They can: drive return and supply fit beside the drive on one layer if the signals go to a pitch of 0.27 mm. I start a revision B with that.',
    true,
  )
  await stage.reply(
    mechanical,
    hinge,
    'Then coverlay above and base film below can bring the copper near the neutral axis. At 8 mm that holds for the constants at nominal only, and nobody measured ours: I split the mount, B gets a former of 17 mm.',
  )
  return revisionId
}

const BENCH_NOTES = `Bench model of the mirror hinge

Construction  two layers, 17 um foil, panel plated, 25 um coverlay both sides
Former        8 mm inside radius, 90 degrees, one way
Result        first open conductor at 6 100 sweeps, second at 7 400; outer layer both times
Remark        three samples only; says little about scatter
`
