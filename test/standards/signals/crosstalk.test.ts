import { farEndHalfDifference, getNearEnd, getPairFigures, reachedFraction } from '@/lib/engine/signals'
import { checkTopic, expectValue, input } from '../check-values'
import { betweenPlanes, overPlane, STRIP_FINENESS, solved } from './sections'

checkTopic('8 crosstalk', [
  [
    /^xt-edge-/,
    (check) => {
      const [w, s] = [100 * input(check, 'widthOverSpacing'), 100 * input(check, 'gapOverSpacing')]
      const strips = [-1, 1].map((side) => ({ centreUm: (side * (w + s)) / 2, bottomUm: 50, widthUm: w }))
      const section = betweenPlanes(100, input(check, 'relativePermittivity'), strips)
      const pair = getPairFigures(solved(section, STRIP_FINENESS))
      const nearEnd = getNearEnd(pair)
      expectValue(check, 'zEvenOhm', pair.even.impedanceOhm)
      expectValue(check, 'zOddOhm', pair.odd.impedanceOhm)
      expectValue(check, 'couplingCoefficientK', pair.couplingCoefficient)
      expectValue(check, 'mutualOverSelf', pair.capacitiveCoupling)
      expectValue(check, 'mutualOverSelf', pair.inductiveCoupling)
      expectValue(check, 'kbQuarterSum', nearEnd.backwardFraction)
      expectValue(check, 'nextMatchedStep', nearEnd.saturatedStepFraction)
      expectValue(check, 'z0MatchOhm', Math.sqrt(pair.even.impedanceOhm * pair.odd.impedanceOhm))
    },
  ],
  [
    /^xt-ms-/,
    (check) => {
      const [w, s, h] = [input(check, 'widthUm'), input(check, 'gapUm'), input(check, 'heightUm')]
      const strips = [-1, 1].map((side) => ({ centreUm: (side * (w + s)) / 2, bottomUm: h, widthUm: w }))
      const section = overPlane(h, input(check, 'relativePermittivity'), strips)
      const pair = getPairFigures(solved(section, STRIP_FINENESS))
      expectValue(check, 'capacitiveCoupling', pair.capacitiveCoupling)
      expectValue(check, 'inductiveCoupling', pair.inductiveCoupling)
      expectValue(check, 'kbQuarterSum', getNearEnd(pair).backwardFraction)
      expectValue(check, 'farEndHalfDifference', farEndHalfDifference(pair))
    },
  ],
  [
    /^xt-unsaturated/,
    (check) => {
      const reached = reachedFraction(
        input(check, 'lengthMm'),
        input(check, 'effectivePermittivity'),
        input(check, 'riseTimePs'),
      )
      expectValue(check, 'roundTripPs', reached * input(check, 'riseTimePs'))
      expectValue(check, 'nextFraction', input(check, 'kb') * reached)
    },
  ],
])
