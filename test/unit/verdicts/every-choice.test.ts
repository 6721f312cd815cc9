import { expect, test } from 'vitest'
import { parseDesign } from '@/lib/engine'
import { ATTACKED_DESIGNS, CHECKED_ITEMS, listSayings } from './attacked-designs'
import { changeEverywhere, toChoice } from './change-everywhere'
import { listChoicePatterns } from './schema-patterns'

/*
 * Every choice of the design, as its schema lists them, changed to each other word that it takes: some item of the checklist must say another thing, in
 * verdict or in words, or nothing reads what was chosen. A choice that is added to the schema is attacked from then on. Our choice, no published source.
 */

/** Read where something else is so as well, which it is in none of these designs; with an item that rests on it, whose examples have that state. */
const READ_IN_OTHER_STATES: Readonly<Record<string, string>> = {
  // One that is not "none" is enough.
  'brief.exposure.coolants': 'fluids',
  'brief.exposure.cleaners': 'fluids',
  'brief.exposure.light': 'fluids',
  'brief.exposure.touchedFace': 'skin-contact',
  'bends.*.leafLengths': 'leaf-pull',
  'bends.*.forming.by': 'forming',
  'features.netClasses.*.kind': 'impedance-given',
  'features.netClasses.*.coupon': 'impedance-given',
  'features.conductors.*.carriesPower': 'voltage-drop',
  'features.holes.*.filling': 'via-structure',
  'features.pads.*.clearOfBends': 'straight-film',
  'features.outlineCorners.*.tearStop': 'tear-stop',
  'features.slits.*.tearStop': 'tear-stop',
  'features.connectors.*.isHardGold': 'contact-finish',
  'features.shieldGround.openingsShown': 'shield-ground',
}

/** Written on papers, and read by no item of the checklist; with where. */
const FOR_PAPERS: Readonly<Record<string, string>> = {
  'brief.assembly.dryingSetBy': 'notes of the drawing; items ask for it and take any word',
  'brief.assembly.packedAs': 'notes of the drawing; items ask for it and take any word',
  'materials.*.foil.type': 'the table of materials: life and strain go by the constants',
  'features.stiffeners.*.purpose': 'the table of stiffeners; an item asks for it and takes any word',
  'features.outline.rollingDirection': 'nesting on panels, and the arrow on the drawing',
  'features.routing.cutOutsConsideredAtTightBends': 'nowhere: older documents state it, and no form asks for it',
  'plan.dimensions.*.direction': 'the drawing',
  'plan.dimensions.*.isReference': 'the drawing',
}

/** Stated in none of the designs that are attacked, or changed by itself alone refused by the schema; with what tries it. */
const UNTRIED: Readonly<Record<string, string>> = {
  'brief.acceptance.flameClassHeld': 'the examples of `flame-class`',
  'brief.exposure.openFinishCovered': 'the examples of `skin-contact`',
  'materials.*.kind': 'another kind has other constants, and is refused',
  'construction.layers.*.kind': 'another kind has other fields, and is refused',
  'construction.zones.*.kind': 'another kind has other fields, and is refused',
  'features.conductors.*.impedance.kind': 'the examples of `impedance-value`',
  'features.conductors.*.impedance.coupon': 'the examples of `impedance-given`',
  'features.conductors.*.impedance.referenceUnbroken': 'the examples of `return-path`',
  'features.holes.*.clearOfBends': 'the examples of `hole-to-bend`',
  'features.coverlayOpenings.*.clearOfBends': 'the examples of `opening-to-bend`',
  'features.components.*.clearOfBends': 'the examples of `component-to-bend`',
  'plan.pads.*.isRound': 'the tests of the plan',
  'plan.components.*.face': 'the tests of the plan',
  'plan.markings.*.face': 'the tests of the plan',
}

test('a choice that changes is noticed by an item of the checklist, or declared as one for papers', () => {
  const before = ATTACKED_DESIGNS.map(([, design]) => listSayings(design))
  const untried: string[] = []
  const unread: string[] = []
  for (const [pattern, choices] of listChoicePatterns()) {
    let isTried = false
    const isRead = ATTACKED_DESIGNS.some(([, design], at) =>
      [...choices].some((choice) => {
        const after = changeEverywhere(design, pattern, toChoice(choice))
        if (after === null) return false
        const parsed = parseDesign(after)
        // What the schema refuses is named with its field.
        if (!parsed.ok) return false
        isTried = true
        const said = before[at] ?? []
        return listSayings(parsed.value).some((each, index) => each !== said[index])
      }),
    )
    if (!isTried) untried.push(pattern)
    else if (!isRead) unread.push(pattern)
  }
  const declared = [...Object.keys(READ_IN_OTHER_STATES), ...Object.keys(FOR_PAPERS)]
  expect(unread.toSorted()).toEqual(declared.toSorted())
  for (const [pattern, itemId] of Object.entries(READ_IN_OTHER_STATES)) {
    const item = CHECKED_ITEMS.find(({ id }) => id === itemId)
    const rests = item?.restsOn.some((path) => pattern === path || pattern.startsWith(`${path}.`))
    expect([pattern, itemId, rests]).toEqual([pattern, itemId, true])
  }
  expect(untried.toSorted()).toEqual(Object.keys(UNTRIED).toSorted())
}, 600_000)
