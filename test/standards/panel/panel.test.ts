import { expect } from 'vitest'
import { getPanelCostPerGoodPart } from '@/lib/fabrication/cost'
import { countAlong, countBlocks, countGrid, nestPart, packBothWays, type RectangleTask } from '@/lib/fabrication/panel'
import { type CheckCase, checkTopic, expectValue, input, listOf } from '../check-values'

const UM_PER: Readonly<Record<string, number>> = { mm: 1000, in: 25_400 }

const toUm = (check: CheckCase, key: string): number =>
  Math.round(input(check, key) * (UM_PER[String(check.inputs.unit ?? 'mm')] ?? Number.NaN))

function makeTask(check: CheckCase): RectangleTask {
  const borderUm = toUm(check, 'border')
  return {
    usableWidthUm: toUm(check, 'panelWidth') - 2 * borderUm,
    usableHeightUm: toUm(check, 'panelHeight') - 2 * borderUm,
    partWidthUm: toUm(check, 'partWidth'),
    partHeightUm: toUm(check, 'partHeight'),
    spacingUm: toUm(check, 'spacing'),
  }
}

function checkGrid(check: CheckCase): void {
  const task = makeTask(check)
  const [upright, across] = [countGrid(task, false), countGrid(task, true)]
  expect([upright.columns, upright.rows]).toEqual(listOf(check.expected, 'asDrawn'))
  expect([across.columns, across.rows]).toEqual(listOf(check.expected, 'rotated'))
  expectValue(check, 'countAsDrawn', upright.count)
  expectValue(check, 'countRotated', across.count)
  expectValue(check, 'best', Math.max(upright.count, across.count))

  // The whole way, from a panel format: unturned and turned apart, as the check value counts one way at a time.
  const unitMm = (UM_PER[String(check.inputs.unit)] ?? Number.NaN) / 1000
  const { partWidthUm: w, partHeightUm: h } = task
  const borderMm = input(check, 'border') * unitMm
  const nestings = ([[0], [90]] as const).map((turns) =>
    nestPart(
      {
        outline: [
          [0, 0],
          [w, 0],
          [w, h],
          [0, h],
        ],
        rollingDirection: null,
      },
      {
        id: 'check',
        name: 'Check value',
        widthMm: input(check, 'panelWidth') * unitMm,
        heightMm: input(check, 'panelHeight') * unitMm,
        marginLeftMm: borderMm,
        marginRightMm: borderMm,
        marginTopMm: borderMm,
        marginBottomMm: borderMm,
        spacingMm: input(check, 'spacing') * unitMm,
        allowedRotationsDeg: [...turns],
        foilRollingDirection: null,
        note: '',
      },
    ),
  )
  expect(nestings.map(({ count }) => count)).toEqual([upright.count, across.count])
  const best = Math.max(...nestings.map(({ utilisationFraction }) => utilisationFraction))
  expectValue(check, 'utilisationOfPanelPercent', 100 * best)
}

/** Sides of the mixed cases carry no unit: they are taken as millimetres. */
function checkMixed(check: CheckCase): void {
  const task: RectangleTask = {
    usableWidthUm: toUm(check, 'usableWidth'),
    usableHeightUm: toUm(check, 'usableHeight'),
    partWidthUm: toUm(check, 'partWidth'),
    partHeightUm: toUm(check, 'partHeight'),
    spacingUm: toUm(check, 'spacing'),
  }
  expectValue(check, 'bestSingleOrientation', Math.max(countGrid(task, false).count, countGrid(task, true).count))
  expectValue(check, 'bestMixed', countBlocks(packBothWays(task)))
}

checkTopic('13 panel nesting', [
  [
    /^pan-floattrap/,
    (check) =>
      expectValue(check, 'fitExact', countAlong(toUm(check, 'usable'), toUm(check, 'part'), toUm(check, 'spacing'))),
  ],
  [/^pan-mixed/, checkMixed],
  [
    /^pan-cost$/,
    (check) =>
      expectValue(
        check,
        'costPerGoodPart',
        getPanelCostPerGoodPart(input(check, 'panelCost'), input(check, 'partsPerPanel'), input(check, 'yield')),
      ),
  ],
  [
    /^pan-cost-compare$/,
    (check) => {
      const [costA, costB] = ['countA', 'countB'].map((key) =>
        getPanelCostPerGoodPart(input(check, 'panelCost'), input(check, key), input(check, 'yield')),
      ) as [number, number]
      expectValue(check, 'costA', costA)
      expectValue(check, 'costB', costB)
      expectValue(check, 'savingPercent', 100 * (1 - costB / costA))
    },
  ],
  [
    /^pan-taili$/,
    (check) => {
      // Total = n L + (n - 1) s + 2 border: exactly n fit in it, and no longer when it is 1 um shorter.
      const totalUm = 1000 * Number(check.expected.panelLength)
      const usableUm = totalUm - 2 * toUm(check, 'border')
      const count = countAlong(usableUm, toUm(check, 'length'), toUm(check, 'space'))
      expect(count).toBe(input(check, 'count'))
      expect(countAlong(usableUm - 1, toUm(check, 'length'), toUm(check, 'space'))).toBe(count - 1)
    },
  ],
  [/^pan-/, checkGrid],
])
