import { describe, expect, test } from 'vitest'
import { isOpen, isPlaceholder } from '@/lib/engine'
import { evaluateItem, getItem } from '@/lib/engine/catalogue'
import { readFieldPlaces } from '@/lib/engine/catalogue/field-places'
import { buildContext } from '@/lib/engine/evaluate'
import { makeExampleDesign } from './example-design'

/* Which texts answer a question. Common practice and our choice, no published source. */

const LEFT_FOR_LATER = ['-', '–', '...', 'tbd', 'T.B.D.', 'to be confirmed', 'as usual', 'Standard', 'n/a', '???', '']

const EMPTY = [
  'ok',
  'OK.',
  'yes',
  'any',
  'x',
  'XX',
  'aaa',
  'see drawing',
  'See the drawing.',
  'per spec',
  'as per specification',
  'per IPC',
  'according to IPC',
  'in accordance with the standard',
  'see attached data sheet',
  'to drawing',
  'as agreed',
]

const ANSWERS = [
  'per IPC-6013 class 3',
  'see drawing QI-2041 sheet 2',
  'ISO 2768-m',
  'none',
  'no',
  'acrylic, 1 mm wide',
  'both faces of the clamp',
  'M. Harrow, design office',
  'to the middle of the land',
  'see note 4',
  'standard tin-lead is not allowed',
  'any of the three listed films',
]

describe('a text', () => {
  test.each(LEFT_FOR_LATER)('"%s" is left for later', (text) => {
    expect(isPlaceholder(text)).toBe(true)
    expect(isOpen(text)).toBe(true)
  })
  test.each(EMPTY)('"%s" answers nothing', (text) => expect(isOpen(text)).toBe(true))
  test.each(EMPTY)('"%s" may be a name or a cell all the same', (text) => expect(isPlaceholder(text)).toBe(false))
  test.each(ANSWERS)('"%s" is an answer', (text) => expect(isOpen(text)).toBe(false))
})

test.each(EMPTY)('"%s" leaves open what items ask in words', (text) => {
  const design = makeExampleDesign()
  const read = (itemId: string) => evaluateItem(getItem(itemId), buildContext(design)).verdict
  design.brief.whoToAsk = text
  expect(read('contact-person')).toBe('not-computed')
  for (const bend of design.bends) bend.flexTest.pointsOfApplication = text
  expect(read('flex-test-terms')).toBe('not-computed')
  Object.assign(design.features.rigidEdges, { bead: 'called-out', beadMaterial: text })
  expect(read('bead-beside-moving-bend')).toBe('not-computed')
})

test('a choice is made though its word answers nothing where people write', () => {
  const design = makeExampleDesign()
  design.brief.agreements.drawingOrStandard = 'standard'
  const read = () => readFieldPlaces(buildContext(design), 'brief.agreements.drawingOrStandard').places
  expect(read().map(({ isStated }) => isStated)).toEqual([true])
  design.brief.agreements.drawingOrStandard = null
  expect(read().map(({ isStated }) => isStated)).toEqual([false])
})
