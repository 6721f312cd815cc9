import { readFileSync } from 'node:fs'
import { createElement } from 'react'
import { renderToStaticMarkup } from 'react-dom/server'
import { describe, expect, it } from 'vitest'
import { AnswerMark } from '@/app/_components/review/answer-mark'
import { VerdictMark } from '@/app/_components/ui/verdict-mark'
import { PRODUCT_MARK_PATHS } from '@/lib/drawing'
import { VERDICT_WORDS } from '@/lib/engine'
import { ANSWER_STATES } from '@/lib/review'

const shapeOf = (markup: string) => /<svg[\s\S]*<\/svg>/.exec(markup)?.[0] ?? ''

describe('marks', () => {
  const verdicts = (Object.keys(VERDICT_WORDS) as (keyof typeof VERDICT_WORDS)[]).map((verdict) =>
    renderToStaticMarkup(createElement(VerdictMark, { verdict })),
  )
  const answers = ANSWER_STATES.map((state) => renderToStaticMarkup(createElement(AnswerMark, { state })))

  it('of verdicts and of answers are all of different shapes, and each stands beside its word', () => {
    const shapes = [...verdicts, ...answers].map(shapeOf)
    expect(shapes.every((shape) => shape.length > 50)).toBe(true)
    expect(new Set(shapes).size).toBe(shapes.length)
    for (const mark of [...verdicts, ...answers]) expect(mark).toMatch(/<\/svg><span>[A-Za-z ]+<\/span>/)
  })

  it('of answers alone have a ring', () => {
    expect(answers.every((mark) => mark.includes('<circle'))).toBe(true)
    expect(verdicts.some((mark) => mark.includes('<circle'))).toBe(false)
  })

  it('the icon of the browser tab is the product’s own', () => {
    const icon = readFileSync('app/icon.svg', 'utf8')
    for (const { d } of PRODUCT_MARK_PATHS) expect(icon).toContain(`d="${d}"`)
    for (const { width } of PRODUCT_MARK_PATHS) expect(icon).toContain(`stroke-width="${width}"`)
  })
})
