import { expect, test } from 'vitest'
import { CATALOGUE } from '@/lib/engine/catalogue'

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

test('each question that should be asked is asked', () => {
  const asked = new Set(CATALOGUE.map(({ id }) => id))
  expect(SHOULD_BE_ASKED.filter((id) => !asked.has(id))).toEqual([])
  expect(SHOULD_BE_ASKED.length).toBeGreaterThanOrEqual(65)
})
