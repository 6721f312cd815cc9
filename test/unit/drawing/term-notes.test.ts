import { expect, test } from 'vitest'
import { FILE_UNITS, makeSheetContents } from '@/lib/drawing/sheet/contents'
import { evaluate, makeBlankDesign } from '@/lib/engine'
import { makeExampleDesign } from '../catalogue/example-design'

function readNotes(design: ReturnType<typeof makeExampleDesign>): Map<string, string> {
  const block = makeSheetContents(design, evaluate(design), FILE_UNITS).find(({ kind }) => kind === 'notes')
  if (block?.kind !== 'notes') throw new Error('the sheet has no notes')
  return new Map(block.notes.map(({ id, text }) => [id, text]))
}

test('terms stand in the notes of the drawing, those of one note together', () => {
  const notes = readNotes(makeExampleDesign())
  expect(notes.get('test-terms')).toBe(
    'Electrical test: Test voltage: 100 V; Continuity, at most: 5 Ω; Isolation, at least: 100 MΩ.',
  )
  expect(notes.get('flame-class')).toBe('Flame class: none asked for.')
  expect(notes.get('marking')).toContain('Letter height: 1.2 mm')
  expect(notes.get('precedence')).toContain('Order or drawing, which wins: the order')
  expect(notes.get('disagreement')).toContain('no note says which wins')
})

test('what is not stated has no note', () => {
  const design = makeExampleDesign()
  const { acceptance, finishTerms, marking, agreements, exposure } = makeBlankDesign('Blank').brief
  Object.assign(design.brief, { acceptance, finishTerms, marking, agreements, exposure })
  const notes = readNotes(design)
  for (const id of ['test-terms', 'flame-class', 'marking', 'precedence', 'first-article', 'cleanliness']) {
    expect(notes.has(id)).toBe(false)
  }
  expect(notes.get('disagreement')).toBe('Where this sheet, the artwork and the order disagree, ask before building.')
})
