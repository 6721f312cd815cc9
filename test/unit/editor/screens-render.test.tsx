import { describe, expect, test } from 'vitest'
import { BendsScreen } from '@/app/_components/engineering/bends/bends-screen'
import { BriefScreen } from '@/app/_components/engineering/brief/brief-screen'
import { ConstructionScreen } from '@/app/_components/engineering/construction/construction-screen'
import { FeaturesScreen } from '@/app/_components/engineering/features/features-screen'
import { PlanScreen } from '@/app/_components/engineering/plan/plan-screen'
import { evaluate } from '@/lib/engine'
import { DELIVERED_TEMPLATE } from '@/lib/engine/catalogue'
import { findStartingConstruction } from '@/lib/engine/starting-constructions'
import { renderScreen } from '@/test/factories/render-screen'

const starting = findStartingConstruction('single-sided')
if (starting === null) throw new Error('the starting construction exists')
const design = starting.makeDesign('Rendered')
const stored = {
  revisionId: 'revision',
  label: 'C',
  design,
  designVersion: 1,
  evaluation: evaluate(design),
  limits: [],
  testedLives: [],
  artworkFacts: {},
  checkedLimits: [],
  template: DELIVERED_TEMPLATE,
  ownMaterials: [],
  mayEdit: true,
  lockedBecause: '',
  proposing: null,
} as const

const SCREENS = {
  bends: () => <BendsScreen stored={stored} saveAction={save} initialBendId={null} />,
  brief: () => <BriefScreen stored={stored} saveAction={save} />,
  construction: () => <ConstructionScreen stored={stored} saveAction={save} keepAction={null} />,
  features: () => <FeaturesScreen stored={stored} saveAction={save} />,
  plan: () => <PlanScreen stored={stored} saveAction={save} />,
}
const save = () => Promise.reject(new Error('nothing is saved here'))
const render = (name: keyof typeof SCREENS) => renderScreen(SCREENS[name]()).replaceAll('<!-- -->', '')

describe('screens of the editor, as the server sends them', () => {
  test.each(Object.keys(SCREENS) as (keyof typeof SCREENS)[])('%s says how much is assumed', (name) => {
    expect(render(name)).toContain(`${design.assumed.length} values are assumed and not confirmed yet`)
  })

  test('each assumed value is marked where it stands, and nothing else', () => {
    const countOf = (list: string) => design.assumed.filter((mark) => mark.startsWith(`${list}.`)).length
    const marksIn = (html: string) => html.match(/Confirm the assumed/g)?.length ?? 0
    // The motion of a bend is asked for dynamic use alone.
    expect(marksIn(render('bends'))).toBe(countOf('bends') - 1)
    expect(marksIn(render('brief'))).toBe(0)
    expect(marksIn(render('construction'))).toBe(countOf('zones') + countOf('layers'))
  })

  test('a connector’s window has both ends to fill, and neither is filled', () => {
    const html = render('construction')
    for (const end of ['Minimum', 'Maximum']) {
      expect(html).toContain(`${end} thickness for the connector`)
    }
    expect(html).not.toMatch(/value="(270|330)"/)
  })

  test('stiffeners are the construction’s, with no button to add one', () => {
    const html = render('features')
    for (const { name } of design.construction.layers.filter(({ kind }) => kind === 'stiffener')) {
      expect(html).toContain(name)
    }
    expect(html).not.toContain('Add stiffener')
    expect(html).toContain('Add slit')
  })

  test('the revision’s label is shown and is not asked for', () => {
    const html = render('brief')
    expect(html).toContain('The revision’s own label')
    expect(html).not.toContain('Revision label')
  })
})
