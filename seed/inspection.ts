import { type Actor, answerItem, attachFile, getRevision } from '@/lib/data'
import { toBytes } from './read-files'
import type { Stage } from './stage'

/** What somebody looked at, by item: sheet, layer or view, and what was seen. */
export type Inspection = Readonly<Record<string, readonly [sheet: string, layer: string, seen: string]>>

interface InspectionStory {
  readonly revisionId: string
  readonly actor: Actor
  readonly fileName: string
  readonly title: string
  readonly inspection: Inspection
}

/** The inspection record as it is attached beside each answer that rests on it. */
function writeRecord(title: string, inspection: Inspection): string {
  const lines = Object.values(inspection).map(([sheet, layer, seen]) => `${sheet}; ${layer}: ${seen}`)
  return `${title}\n\n${lines.join('\n')}\n`
}

/**
 * Somebody stands by what the design records as seen: the record goes beside each item that the design rests on a recorded yes, and the answer
 * names sheet, layer and file.
 */
export async function confirmWhatWasSeen(stage: Stage, story: InspectionStory): Promise<void> {
  const { actor, revisionId, fileName, title, inspection } = story
  const bytes = toBytes(writeRecord(title, inspection))
  const { items } = await getRevision(actor, revisionId)
  for (const { itemId, result, answerVersion } of items) {
    const look = inspection[itemId]
    if (look === undefined || result.basis !== 'stated' || result.verdict !== 'needs-judgment') continue
    const [sheet, layer, seen] = look
    const { sha256 } = await stage.carryOut(`attach the record to ${itemId}`, () =>
      attachFile(actor, { revisionId, target: { kind: 'item', itemId }, fileName, bytes }),
    )
    await stage.carryOut(`stand by what was seen for ${itemId}`, () =>
      answerItem(actor, {
        revisionId,
        itemId,
        state: 'meets',
        reason: seen,
        seenVersion: answerVersion,
        lookedAt: { sheet, layer, sha256 },
      }),
    )
  }
}

export const PIPIT_INSPECTION: Inspection = {
  'artwork-agreement': [
    'Drawing against artwork',
    'Profile and both drill files',
    'Laid over each other: same outline, same holes, plated and unplated apart.',
  ],
  'width-change-in-bend': ['Arms', 'L1 and L2', 'All tracks keep their width from the island to the end of the arm.'],
  'direction-change-in-bend': ['Arms', 'L1 and L2', 'All tracks run straight across the bend.'],
  'conductor-corners': [
    'Island and arm',
    'L1 and L2',
    'Electrode lines and returns turn in arcs; guard lines meet their bus on the stiffened island alone.',
  ],
  'conductor-spacing': [
    'Arms',
    'L1 and L2',
    'Pitch of 0.44 mm over the width of the arm; where a place is left free, the line of the other layer lies.',
  ],
  teardrop: ['Island', 'L1 and L2', 'Each land has a teardrop.'],
  'layer-stagger': ['Arms', 'L1 over L2', 'Tracks of L2 lie in the gaps of L1; none over another.'],
  'coverlay-edge-in-bend': [
    'Arms',
    'Both coverlays',
    'Both run over the whole part; their openings lie 10 mm and more from the bend.',
  ],
  'transition-relief': ['Island edge', 'Assembly', 'Rounded stiffener edge with the coverlay under it.'],
  'tooling-change': [
    'Capability sheet',
    'Outline',
    'Edges, corners and openings hold for the hard die as for the laser.',
  ],
  'fold-model': ['Paper model', 'Folded part', 'Printed at full size and pushed into the housing; nothing binds.'],
  forming: [
    'Assembly fixture',
    'Arm',
    'Bent by hand over the fixture; the channel of the housing takes up the springback.',
  ],
  'free-length': ['Housing', 'Arm', 'The channel holds the arm over its whole length.'],
  'enclosure-fit': ['Housing model, section B', 'Arm', 'Arm before and after insertion, 0.4 mm clear on both sides.'],
  carrier: ['Array', 'Frame', 'The frame lies on the pins of the printer and of the oven belt.'],
  'array-drawing': [
    'Array',
    'Outline',
    'Eight parts; tabs on the islands alone, fiducials, tooling holes, mark beside each part.',
  ],
}

export const SKUA_INSPECTION: Inspection = {
  'width-change-in-bend': ['Hinge', 'L2', 'Each conductor keeps its width over the hinge; steps lie under the boards.'],
  'direction-change-in-bend': ['Hinge', 'L2', 'Straight and square to the axis over the whole hinge.'],
  'conductor-corners': ['Boards, hinge and link', 'L1 to L4', 'Arcs on the flex layers; no corner found.'],
  'conductor-spacing': ['Hinge', 'L2', 'Pitch of 0.27 mm over the signals, even to both edges.'],
  teardrop: ['Boards and link', 'L2 and L3', 'Each land has a teardrop.'],
  'layer-stagger': [
    'Assembly fold',
    'L2 over L3',
    'The spare returns of L3 run beside the conductors of L2; none over another.',
  ],
  'coverlay-edge-in-bend': ['Hinge and fold', 'Both coverlays', 'Edges run 1 mm under the boards, none inside a bend.'],
  'transition-relief': ['Board edges', 'Assembly', 'Bead of flexible epoxy, 1 mm wide, at both edges.'],
  lessons: [
    'Findings on revision A',
    'Threads',
    'Each thread of revision A has its answer in the layers or the hinge of B.',
  ],
  'fold-order-model': [
    'Bench model',
    'Hinge and fold',
    'Film model of full size run over the former of the split mount.',
  ],
  'contact-strain': [
    'Optics block',
    'Finger',
    'The finger goes in from above, in sight; no plane and no hole up to the fold.',
  ],
  forming: [
    'Assembly fixture',
    'Link',
    'Folded by hand over the edge of the optics block; its channel takes up the springback.',
  ],
  'free-length': ['Optics block', 'Link', 'The channel holds the fold on both sides.'],
  'enclosure-fit': ['Mount model, section A', 'Hinge', 'Both ends of travel, 1.2 mm clear of the cover.'],
  wear: ['Mount model, section A', 'Hinge', 'Runs on the turned former of 17 mm; no edge within reach.'],
  carrier: ['Array', 'Pallet', 'Drawing of the pallet by the assembler, with the hinge over a pocket.'],
  'array-drawing': [
    'Array',
    'Outline',
    'Four parts; tabs on the boards alone, fiducials, tooling holes, mark beside each part.',
  ],
}

/** Seen on models before there was a layout. */
export const PIPIT_FIRST_LOOK: Inspection = {
  'combined-motion': ['Housing', 'Arm', 'The arm bends in one plane into its channel.'],
  'skin-contact': [
    'Evaluation of the skin side',
    'Bottom coverlay and electrode lands',
    'Film, adhesive and finish of the bottom face, each evaluated for wear of up to 30 days; no nickel in the finish.',
  ],
}

export const SKUA_FIRST_LOOK: Inspection = {
  'combined-motion': [
    'Mount model',
    'Hinge and link',
    'The hinge bends in one plane; the link does not move after assembly.',
  ],
}
