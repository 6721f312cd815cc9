import { expect, it, vi } from 'vitest'
import { evaluate } from '@/lib/engine'
import { DELIVERED_TEMPLATE } from '@/lib/engine/catalogue'
import { renderScreen } from '@/test/factories/render-screen'
import { findAbsence, listIdle } from './declared-absences'
import { complete, TYPED_PATTERNS } from './field-values'
import { full } from './full-design'

/*
 * Every field of the dictionary has an input on the screens, or says why it has none. Each input is known by the place that it writes to.
 */

const seen = vi.hoisted(() => new Set<string>())
vi.mock('@/app/_components/engineering/cells/cell-frame', async (original) => {
  const module = await original<typeof import('@/app/_components/engineering/cells/cell-frame')>()
  return {
    ...module,
    CellFrame: (props: Parameters<typeof module.CellFrame>[0]) => {
      seen.add(props.at.path)
      return module.CellFrame(props)
    },
  }
})

/** The test files share their modules: screens that another one loaded do not know of the cell above. */
async function loadScreens() {
  vi.resetModules()
  const { BendsScreen } = await import('@/app/_components/engineering/bends/bends-screen')
  const { BriefScreen } = await import('@/app/_components/engineering/brief/brief-screen')
  const { ConstructionScreen } = await import('@/app/_components/engineering/construction/construction-screen')
  const { FeaturesScreen } = await import('@/app/_components/engineering/features/features-screen')
  const { DraftHolder } = await import('@/app/_components/engineering/draft/draft-holder')
  return { BendsScreen, BriefScreen, ConstructionScreen, DraftHolder, FeaturesScreen }
}

it('every field has an input, or says why it has none', async () => {
  const { BendsScreen, BriefScreen, ConstructionScreen, DraftHolder, FeaturesScreen } = await loadScreens()
  const stored = {
    revisionId: 'revision',
    label: 'C',
    design: complete,
    designVersion: 1,
    evaluation: evaluate(full),
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
  const save = () => Promise.reject(new Error('nothing is saved here'))
  renderScreen(
    <DraftHolder>
      {complete.bends.map(({ id }) => (
        <BendsScreen key={id} stored={stored} saveAction={save} initialBendId={id} />
      ))}
      <BriefScreen stored={stored} saveAction={save} />
      <ConstructionScreen stored={stored} saveAction={save} keepAction={null} />
      <FeaturesScreen stored={stored} saveAction={save} />
    </DraftHolder>,
  )
  const patterns = new Set([...seen].map((path) => path.replaceAll(/\[\d+\]/g, '.*')))
  const absent = TYPED_PATTERNS.map(({ pattern }) => pattern).filter((pattern) => !patterns.has(pattern))
  expect(absent.filter((pattern) => findAbsence('form', pattern) === null)).toEqual([])
  expect(listIdle('form', absent)).toEqual([])
  expect(seen.size).toBeGreaterThan(300)
  // All screens of a large design at once: on a busy machine that takes a minute.
}, 240_000)
