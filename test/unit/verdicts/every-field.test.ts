import { expect, test } from 'vitest'
import { type Design, getOutcomeVerdict, parseDesign } from '@/lib/engine'
import { CATALOGUE, evaluateItem, type ItemVerdict } from '@/lib/engine/catalogue'
import { ATTACKED_DESIGNS as BASES } from './attacked-designs'
import { changeEverywhere, toNumber } from './change-everywhere'
import { FACTS } from './complete-start'
import { buildFigures } from './figures'
import { listNumberPatterns } from './schema-patterns'

/*
 * Every number of the design, as its schema lists them, made a thousand times as large, a thousandth, nothing, or of the other sign, wherever it
 * stands at once: an item of major severity or more must say so that said nothing before, or the field is declared below with the reason why it may
 * be anything. No hand-picked list: a field that is added to the schema is attacked from then on. Common practice and our choice, no published
 * source.
 */

const CHANGES = {
  'a thousand times': (value: number) => (value === 0 ? 1000 : value * 1000),
  'a thousandth': (value: number) => value / 1000,
  nothing: () => 0,
  'the other sign': (value: number) => -value,
} as const
type Change = keyof typeof CHANGES

const SMALLER: readonly Change[] = ['a thousandth', 'nothing']
const SMALL: readonly Change[] = [...SMALLER, 'the other sign']
const ALL = Object.keys(CHANGES) as Change[]

/** Where nobody can say that a figure is wrong, by field, with the changes and the reason. */
const MAY_BE: Readonly<Record<string, readonly [changes: readonly Change[], because: string]>> = {
  'brief.operatingMinDegC': [SMALL, 'near 0 °C and above it are ordinary cold ends'],
  'brief.flatAtDegC': [SMALLER, 'a part may be made flat for work at 0 °C'],
  'brief.exposure.coldTestDegC': [
    SMALL,
    'a test at 0 °C or warmer is one, though `cold-motion` asks for colder ones where a bend moves',
  ],
  'brief.quantityPerYear': [['a thousand times', 'a thousandth'], 'one part or a million of them'],
  'brief.temperatureCycles': [
    ['a thousand times'],
    'a need; where nothing tells the life of holes, `hole-life` says so before',
  ],
  'brief.acceptance.continuityOhm': [['a thousandth'], 'a need: severe, and testers measure it'],
  'brief.acceptance.isolationMegohm': [['a thousand times'], 'a need: severe, and testers measure it'],
  'brief.acceptance.solderingsOffCount': [SMALLER, 'no part has to come off again'],
  'brief.exposure.pullForceNewton': [SMALLER, 'nothing pulls'],
  'brief.outgassing.*.condensablePct': [SMALLER, 'sheets report 0.00 %'],
  'construction.layers.*.tolerancePlusUm': [
    SMALLER,
    'sheets have tolerances to one side; both together are held against what is rolled and cast',
  ],
  'construction.layers.*.toleranceMinusUm': [SMALLER, 'as the other side'],
  'construction.layers.*.processingLossUm': [SMALLER, 'foil that no bath has etched loses nothing'],
  'construction.layers.*.coverageFraction': [
    SMALLER,
    'a layer of which no listed conductor crosses a bend may hold hardly any copper',
  ],
  'construction.layers.*.plating.toleranceUm': [
    ['a thousand times'],
    'nothing is read of the plating of a layer that no bath plates',
  ],
  'bends.*.requiredCycles': [['a thousandth'], 'a need: some hundred cycles are one'],
  'bends.*.flexesFromAngleDeg': [SMALLER, 'it opens until it is flat'],
  'bends.*.pullN': [SMALLER, 'nothing pulls'],
  'bends.*.twistDeg': [SMALLER, 'nothing twists'],
  'features.netClasses.*.riseTimePs': [['a thousand times'], 'slow signals have slow edges'],
  'features.conductors.*.currentAmp': [SMALLER, 'signals carry next to nothing'],
  'features.conductors.*.voltageVolt': [SMALLER, 'within one net there is no voltage'],
  'features.conductors.*.frequencyMhz': [['a thousand times', 'a thousandth'], 'from mains to radio'],
  'features.pads.*.coverlayCaptureMm': [SMALLER, 'anchors hold the land as well'],
  'features.pads.*.anchorCount': [SMALLER, 'cover over the rim holds the land as well'],
  'features.holes.*.stiffenerHoleMm': [['nothing'], 'the stiffener closes the hole'],
  'features.widthSteps.*.taperLengthMm': [
    SMALLER,
    'an abrupt step is of minor severity where nothing bends: `width-step`',
  ],
  'features.slits.*.widthMm': [SMALLER, 'a knife takes nothing away'],
  'features.connectors.*.matings': [
    ['a thousand times'],
    'a need: `contact-finish` holds the finish against it where one is stated',
  ],
  ...Object.fromEntries(
    ['pitch', 'contactWidth', 'exposedLength', 'endWidth', 'edgeToContact', 'stiffenerLength'].map((dimension) => [
      `features.connectors.*.${dimension}.minMm`,
      [
        ['exposedLength', 'stiffenerLength'].includes(dimension) ? SMALLER : ['nothing'],
        'a drawing that gives a maximum alone has a minimum of 0, and some ends need hardly any length',
      ] as const,
    ]),
  ),
  'features.rigidEdges.prepregSetBackMm': [SMALLER, 'of minor severity: `prepreg-set-back`'],
  'features.rigidEdges.squeezeOutMm': [SMALLER, 'prepreg that does not flow; more of it is judged'],
  'features.shieldGround.pointCount': [SMALLER, 'these designs have no shield; `shield-ground` judges those that have'],
  'features.shieldGround.maxResistanceOhm': [['a thousandth'], 'a need: severe, and meters measure it'],
}

/** Places of the plan are drawn, and `plan-agreement` and the items that measure the plan look at them; this one is no number of the part. */
const isAttacked = (pattern: string): boolean => !pattern.startsWith('plan.') && pattern !== 'formatVersion'

const SEVERE = CATALOGUE.filter(({ check, severity }) => check !== null && ['blocking', 'major'].includes(severity))
const BAD: readonly ItemVerdict[] = ['fails', 'cannot-tell', 'not-computed']

interface Said {
  readonly verdict: ItemVerdict
  /** Outcomes that are as bad. */
  readonly badCount: number
}

function judgeSevere(design: Design): ReadonlyMap<string, Said> {
  const figures = buildFigures(design, FACTS)
  return new Map(
    SEVERE.map((item) => {
      const { verdict, outcomes } = evaluateItem(item, figures)
      return [item.id, { verdict, badCount: outcomes.filter((each) => BAD.includes(getOutcomeVerdict(each))).length }]
    }),
  )
}

/** Nobody states these in any of the designs that are attacked, and what judges them is tested beside it. */
const UNTRIED: readonly string[] = [
  // Constants that an own foil has none of; `requirements.test.ts` sets each.
  ...['maxServiceDegC', 'maxSolderDegC', 'relativePermittivity', 'yieldStrainPct', 'flowFraction'].map(
    (constant) => `materials.*.${constant}`,
  ),
  // `plane-in-bend` and the sections of lines.
  'construction.zones.*.presence.*.hatch.barMm',
  'construction.zones.*.presence.*.hatch.pitchMm',
  'construction.zones.*.presence.*.hatch.angleDeg',
  // Its own item, `stated-thickness`.
  'construction.zones.*.statedThicknessUm',
  // Free folds and leaves: `states-and-loads.test.ts`, `leaf-length`.
  'bends.*.faceGapMm',
  'bends.*.leafStepMm',
  // `impedance-value` and `requirements.test.ts`.
  'features.conductors.*.impedanceOhm',
  'features.conductors.*.impedance.tolerancePct',
  // Corners: `statements.test.ts` and the tests of outlines.
  'features.outline.verticesMm',
]

test('a gross change of any number is named by an item of major severity, or declared', () => {
  const before = BASES.map(([, design]) => judgeSevere(design))
  const tried = new Set<string>()
  const silent: string[] = []
  const needless = new Set(
    Object.entries(MAY_BE).flatMap(([pattern, [changes]]) => changes.map((each) => `${pattern}: ${each}`)),
  )
  for (const pattern of listNumberPatterns().filter(isAttacked)) {
    for (const change of ALL) {
      BASES.forEach(([name, design], at) => {
        const after = changeEverywhere(design, pattern, toNumber(pattern, CHANGES[change]))
        if (after === null) return
        tried.add(pattern)
        const parsed = parseDesign(after)
        // What the schema refuses is named with its field.
        if (!parsed.ok) return
        const was = before[at]
        const speaks = [...judgeSevere(parsed.value)].some(
          ([id, { verdict, badCount }]) =>
            BAD.includes(verdict) && (verdict !== was?.get(id)?.verdict || badCount > (was.get(id)?.badCount ?? 0)),
        )
        if (speaks) return
        const key = `${pattern}: ${change}`
        if (MAY_BE[pattern]?.[0].includes(change) === true) needless.delete(key)
        else silent.push(`${key} in ${name}`)
      })
    }
  }
  expect(silent).toEqual([])
  expect(listNumberPatterns().filter((pattern) => isAttacked(pattern) && !tried.has(pattern))).toEqual(UNTRIED)
  // A declaration that hides nothing any longer goes.
  expect([...needless]).toEqual([])
}, 600_000)
