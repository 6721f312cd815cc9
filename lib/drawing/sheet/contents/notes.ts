import { BRIEF_FIELDS, type Design, getChoiceWord } from '@/lib/engine'
import { asEntered } from '@/lib/engine/units'
import { nameBends } from './bends'
import { makeEdgeNotes } from './edge-notes'
import type { SheetNotes, SheetResults } from './model'
import { makeTermNotes } from './term-notes'
import type { SheetWords } from './words'

interface Note {
  readonly id: string
  readonly text: string
}

/** The cautions stand in the title block of each sheet. */
function makeClosing({ agreements }: Design['brief']): Note {
  const isOrdered = agreements.orderOrDrawing !== null || agreements.drawingOrArtwork !== null
  return {
    id: 'disagreement',
    text: isOrdered
      ? 'Where this sheet, the artwork and the order disagree and no note says which wins, ask before building.'
      : 'Where this sheet, the artwork and the order disagree, ask before building.',
  }
}

/** General notes, generated from the brief: each only where something is stated. */
export function makeNotes(design: Design, results: SheetResults | null, words: SheetWords): SheetNotes {
  const { brief } = design
  const note = (id: string, isStated: boolean, text: string): Note[] => (isStated ? [{ id, text }] : [])
  const typed = (id: string, label: string, text: string) => note(id, text.trim() !== '', `${label}: ${text.trim()}`)
  const asked = (id: string, value: boolean | null, yes: string, no: string) =>
    note(id, value !== null, value === true ? yes : no)
  const governed = [
    ...(['performanceClass', 'circuitType'] as const).flatMap((key) =>
      brief[key] === null ? [] : [getChoiceWord(BRIEF_FIELDS[key], brief[key])],
    ),
    ...brief.installationUses.map((use) => getChoiceWord(BRIEF_FIELDS.installationUses, use)),
  ]
  const stated = results === null ? [] : results.zones.filter(({ layers }) => layers.length > 0)
  const notes: Note[] = [
    {
      id: 'units',
      text: `Thickness in ${words.thicknessUnit}, plan dimensions in ${words.planUnit}. Layers are numbered from the top face; L counts conductor layers from there, F those that run through flex.`,
    },
    ...note(
      'standard',
      governed.length > 0,
      `To IPC-6013, ${governed.join('; ')}, in the edition that the order names.`,
    ),
    {
      id: 'materials',
      text: 'Materials by the specification in the layer table. Conductor thickness is the foil as bought, before plating.',
    },
    ...note(
      'finished-thickness',
      stated.length > 0,
      'Finished thickness is computed from the layers, with adhesive flow and plating, and its worst case from the tolerances of the layers. What is to be kept is the tolerance that the zone states.',
    ),
    ...note(
      'surface-finish',
      brief.surfaceFinish !== null,
      `Surface finish: ${getChoiceWord(BRIEF_FIELDS.surfaceFinish, brief.surfaceFinish)}.`,
    ),
    ...asked(
      'electrical-test',
      brief.electricalTest,
      'Electrical test of every part.',
      'Electrical test is not asked for.',
    ),
    ...makeTermNotes(design, words),
    ...asked('coupon-test', brief.couponTest, 'Test coupons with every panel.', 'Test coupons are not asked for.'),
    ...asked('fold-test', brief.foldTest, 'Fold test as agreed with the buyer.', 'A fold test is not asked for.'),
    ...note(
      'panel-form',
      brief.panelForm !== null,
      `Delivered as: ${getChoiceWord(BRIEF_FIELDS.panelForm, brief.panelForm)}.`,
    ),
    ...note(
      'temperature',
      brief.operatingMinDegC !== null && brief.operatingMaxDegC !== null,
      `In service from ${asEntered(brief.operatingMinDegC ?? 0, 'degC')} to ${asEntered(brief.operatingMaxDegC ?? 0, 'degC')}.`,
    ),
    ...asked('soldering', brief.solderedAssembly, 'Parts are soldered at assembly.', 'Parts are not soldered.'),
    ...typed('tolerances', 'Tolerances and datums', brief.toleranceScheme),
    ...typed('registration', 'Registration-critical', brief.registrationCriticalFeatures),
    ...typed('bake', 'Bake before assembly', brief.bakeBeforeAssembly),
    ...typed('packing', 'Packing and handling', brief.packingAndHandling),
    ...note(
      'coverlay-edge',
      design.features.routing.coverlayEdgeInsideBend === false,
      'No edge of coverlay or stiffener lies inside a bend.',
    ),
    ...note(
      'copper-to-outline',
      design.features.copperToOutlineMm !== null,
      `Copper stays ${words.plan(design.features.copperToOutlineMm)} ${words.planUnit} or more from the outline.`,
    ),
    ...makeEdgeNotes(design, words),
    ...makeBendNotes(design),
    ...typed('contact', 'In doubt ask', brief.whoToAsk),
    // Notes of a place stand at the view.
    ...(design.plan?.notes ?? [])
      .filter(({ atMm, text }) => atMm === null && text.trim() !== '')
      .map(({ id, text }) => ({ id: `plan-${id}`, text: text.trim() })),
    makeClosing(brief),
  ]
  return { kind: 'notes', id: 'notes', title: 'Notes', notes, leastMm: 118 }
}

function makeBendNotes(design: Design): Note[] {
  const names = nameBends(design)
  return design.bends
    .filter(({ note }) => note.trim() !== '')
    .map((bend) => ({ id: `bend-${bend.id}`, text: `Bend ${names.get(bend.id) ?? ''}: ${bend.note.trim()}` }))
}
