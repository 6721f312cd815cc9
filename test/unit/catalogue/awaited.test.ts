import { describe, expect, test } from 'vitest'
import { SOURCES } from '@/lib/engine'
import { AWAITED_INPUTS, AWAITED_ITEMS, CATALOGUE, SEVERITIES } from '@/lib/engine/catalogue'
import { makeReferencePage } from '@/lib/engine/catalogue/prose'

describe('questions that wait for an input', () => {
  test('have ids of their own, none of an item that is there', () => {
    const ids = AWAITED_ITEMS.map(({ id }) => id)
    expect(new Set(ids).size).toBe(ids.length)
    expect(CATALOGUE.map(({ id }) => id).filter((id) => ids.includes(id))).toEqual([])
    for (const id of ids) expect(id).toMatch(/^[a-z]+(-[a-z]+)*$/)
  })

  test.each(AWAITED_ITEMS.map((item) => [item.id, item] as const))(
    '%s says what it waits for, and from where',
    (_, item) => {
      expect(item.question).toMatch(/^[A-Z].*\?$/)
      expect(item.meanwhile).toMatch(/^[A-Z].*\.$/)
      expect(item.waitsFor.length).toBeGreaterThan(0)
      for (const input of item.waitsFor) expect(AWAITED_INPUTS).toHaveProperty(input)
      expect(SEVERITIES).toHaveProperty(item.severity)
      expect(SOURCES).toHaveProperty(item.sourceKey)
    },
  )

  test('stand on the reference page, each with its wait', () => {
    const page = makeReferencePage()
    expect(page).toContain('wait')
    for (const { id, question, waitsFor } of AWAITED_ITEMS) {
      const line = page.split('\n').find((each) => each.includes(`\`${id}\``))
      expect(line).toContain(question)
      for (const input of waitsFor) expect(line).toContain(AWAITED_INPUTS[input])
    }
  })
})

/** What a review of flexible circuits should ask beside strain and radius, by our sorting: common practice, no published source. */
const SHOULD_BE_ASKED = `
  bend-cover bend-fit feature-lists statements-agree package-contents transition-strip hole-aspect flexible-adhesive-in-rigid
  stack-symmetry conductor-width conductor-space contact-finish contact-geometry bend-use tolerances-given impedance-given
  impedance-value bend-on-plan solder-heat forming contact-strain holes-in-flex hole-to-stiffener-edge free-length combined-motion
  handling-count enclosure-fit wear hole-life open-land carrier array-drawing floor-life bead prepreg-set-back voltage-space
  return-path shield-ground flex-length stiffener-holes flex-test-terms netlist test-terms test-access marking flame-class
  first-article change-control precedence bow-and-twist rework-grade via-structure finish-terms substances substitutes
  tooling-change lessons outgassing skin-contact moisture-sweat cleanliness antenna esd-entry pull-load cold-motion fluids
`
  .trim()
  .split(/\s+/)

test('each question that should be asked is asked, or stands there with what it waits for', () => {
  const asked = new Set([...CATALOGUE, ...AWAITED_ITEMS].map(({ id }) => id))
  expect(SHOULD_BE_ASKED.filter((id) => !asked.has(id))).toEqual([])
  expect(SHOULD_BE_ASKED.length).toBeGreaterThanOrEqual(65)
})
