import { describe, expect, it } from 'vitest'
import { evaluate } from '@/lib/engine'
import { loadDesign } from '../drawing/demo-design'

const { design } = loadDesign('skua-rev-b.json')

function judge(twistDeg: number, twistLengthMm: number) {
  const bends = design.bends.map((bend) => (bend.id === 'hinge' ? { ...bend, twistDeg, twistLengthMm } : bend))
  const life = evaluate({ ...design, bends }).items.find(({ itemId }) => itemId === 'fatigue-life')
  const outcome = life?.outcomes.find(({ places }) => places.some(({ id }) => id === 'hinge'))
  return outcome?.kind === 'decided' ? outcome.verdict : outcome?.kind
}

describe('the length that twists', () => {
  it('is no longer than its zone: a longer one makes nothing meet', () => {
    expect(judge(1, 5000)).toBe('cannot-tell')
  })

  it('leaves certain what fails even over that length', () => {
    expect(judge(3600, 5000)).toBe('fails')
  })
})
