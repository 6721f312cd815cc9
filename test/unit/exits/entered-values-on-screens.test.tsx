import { describe, expect, it } from 'vitest'
import { BendsScreen } from '@/app/_components/engineering/bends/bends-screen'
import { BriefScreen } from '@/app/_components/engineering/brief/brief-screen'
import { ConstructionScreen } from '@/app/_components/engineering/construction/construction-screen'
import { FeaturesScreen } from '@/app/_components/engineering/features/features-screen'
import { UnitProvider } from '@/app/_components/ui/unit-context'
import { type Design, evaluate } from '@/lib/engine'
import { DELIVERED_TEMPLATE } from '@/lib/engine/catalogue'
import { tidy } from '@/lib/engine/numerics'
import {
  DISPLAY_LENGTH_UNITS,
  type DisplayLengthUnit,
  digitsAsEntered,
  digitsOfEnteredLength,
  getShownUnit,
} from '@/lib/engine/units'
import { renderScreen } from '@/test/factories/render-screen'
import { FIELDS, fieldName, full, type Path } from './full-design'

/*
 * The editing screens show what somebody typed to the last digit, in every unit of length. Each numeric field has a number of
 * its own, so that none can be taken for another.
 */

/** A hatch is a conductor layer's: the first layer of a zone is its cover. */
function onConductor(path: Path): Path {
  const [construction, zones, zoneIndex, list] = path
  if (list !== 'presence' || !path.includes('hatch')) return path
  const zone = full.construction.zones[Number(zoneIndex)]
  const index = zone?.presence.findIndex(({ layerId }) => isConductor(layerId)) ?? -1
  return [construction ?? '', zones ?? '', zoneIndex ?? 0, list, index, ...path.slice(5)]
}

const isConductor = (layerId: string) =>
  full.construction.layers.some(({ id, kind }) => id === layerId && kind === 'conductor')

/** Constants of materials come with the material; a spread is no field. Nobody types them on these screens. */
const isEdited = (path: Path) => path[0] !== 'materials'
const EDITED = FIELDS.filter(isEdited).map(onConductor)

/** 12.345, 13.345, ...: three decimals, which a rounding to two would change. */
const VALUES = new Map(EDITED.map((path, index) => [path, tidy(12.345 + index)]))

function makeDistinct(): Design {
  const design = structuredClone(full)
  for (const layer of design.construction.layers) {
    if (layer.kind === 'conductor') Object.assign(layer, { role: 'plane', planePattern: 'hatched' })
  }
  for (const [path, value] of VALUES) {
    const holder = path
      .slice(0, -1)
      .reduce<unknown>((node, key) => (node as Record<string | number, unknown>)[key], design)
    ;(holder as Record<string | number, unknown>)[path.at(-1) ?? ''] = value
  }
  return design
}

const design = makeDistinct()
const evaluation = evaluate(full)
const save = () => Promise.reject(new Error('nothing is saved here'))

function renderScreens(unit: DisplayLengthUnit): string {
  const stored = {
    revisionId: 'revision',
    label: 'C',
    design,
    designVersion: 1,
    evaluation,
    limits: [],
    testedLives: [],
    artworkFacts: {},
    checkedLimits: [],
    template: DELIVERED_TEMPLATE,
    ownMaterials: [],
    mayEdit: true,
    lockedBecause: '',
    proposing: null,
  }
  const bends = design.bends.map(({ id }) => (
    <BendsScreen key={id} stored={stored} saveAction={save} initialBendId={id} />
  ))
  return renderScreen(
    <UnitProvider initialUnit={unit}>
      {bends}
      <BriefScreen stored={stored} saveAction={save} />
      <ConstructionScreen stored={stored} saveAction={save} keepAction={null} />
      <FeaturesScreen stored={stored} saveAction={save} />
    </UnitProvider>,
  )
}

function writeInUnit(path: Path, value: number, unit: DisplayLengthUnit): string {
  const name = String(path.findLast((key) => typeof key === 'string'))
  if (name.endsWith('Fraction')) return digitsAsEntered(tidy(value * 100))
  if (/(Um|^minUm|^maxUm)$/.test(name)) return digitsOfEnteredLength(value, 'um', unit)
  if (name.endsWith('Mm')) return digitsOfEnteredLength(value, 'mm', getShownUnit('mm', unit))
  return digitsAsEntered(value)
}

describe.each(DISPLAY_LENGTH_UNITS)('in %s', (unit) => {
  const html = renderScreens(unit)

  it('every field that is edited stands there to the last digit', () => {
    const missing = EDITED.filter((path) => !html.includes(`value="${writeInUnit(path, VALUES.get(path) ?? 0, unit)}"`))
    expect(missing.map(fieldName)).toEqual([])
  })
})

it('looks at every field of the design', () => {
  expect(EDITED.length).toBeGreaterThan(50)
})
