import { REVISION_TABS } from '@/lib/addresses'
import type { PersonName } from './fixtures'

/** One screen as one person sees it. */
export interface Screen {
  readonly name: string
  readonly path: string
  /** Null for a visitor. */
  readonly as: PersonName | null
  /** A choice that is made there, by its name. */
  readonly choice?: string
  /** Name of a button that is there once the screen has what it is to show. */
  readonly until?: RegExp
}

export interface ScreenScene {
  readonly skuaId: string
  readonly skuaA: string
  readonly skuaB: string
  readonly pipitId: string
  readonly pipitA: string
  readonly brackenfoldId: string
  /** Of Brackenfold, on Skua B. */
  readonly proposalId: string
  /** On Skua B. */
  readonly meetingId: string
  /** A message about that proposal. */
  readonly mailId: string
  /** Path of an open invitation. */
  readonly invitationPath: string
}

/** Stands for a scene where names and places of screens are wanted and no server runs. */
export const NO_SCENE: ScreenScene = {
  skuaId: 'skua-id',
  skuaA: 'skua-a',
  skuaB: 'skua-b',
  pipitId: 'pipit-id',
  pipitA: 'pipit-a',
  brackenfoldId: 'brackenfold-id',
  proposalId: 'proposal-id',
  meetingId: 'meeting-id',
  mailId: 'mail-id',
  invitationPath: '/invitation/token',
}

/** Pages that this scene cannot show, with the test that visits them. */
export const SHOWN_ELSEWHERE: Readonly<Record<string, string>> = {
  'app/setup/page.tsx': 'test/e2e/first-visit.spec.ts',
}

/**
 * Every screen there is: a new page is added here, and is then checked for accessibility and photographed. A unit test compares the list with
 * the pages under `app/`.
 */
export function listScreens(scene: ScreenScene): Screen[] {
  const skua = `/projects/${scene.skuaId}`
  const skuaA = `${skua}/revisions/${scene.skuaA}`
  const skuaB = `${skua}/revisions/${scene.skuaB}`
  const pipitA = `/projects/${scene.pipitId}/revisions/${scene.pipitA}`
  const tab = (name: string) => (name === 'overview' ? '' : `/${name}`)
  return [
    { name: 'sign-in', path: '/sign-in', as: null },
    { name: 'invitation', path: scene.invitationPath, as: null },
    { name: 'forgot-password', path: '/forgot-password', as: null },
    { name: 'reset-password-used-up', path: '/reset-password/used-up', as: null },
    { name: 'confirm-address-used-up', path: '/confirm-address/used-up', as: null },
    { name: 'verify-package', path: '/verify-package', as: 'designer' },
    { name: 'home-designer', path: '/', as: 'designer' },
    ...REVISION_TABS.map((name) => ({ name: `skua-b-${name}`, path: `${skuaB}${tab(name)}`, as: 'designer' as const })),
    ...(['overview', 'construction', 'bends', 'features', 'plan', 'checklist', 'threads'] as const).map((name) => ({
      name: `skua-a-${name}`,
      path: `${skuaA}${tab(name)}`,
      as: 'designer' as const,
    })),
    {
      name: 'skua-b-layer-sheet',
      path: `${skuaB}/construction`,
      as: 'designer',
      choice: 'Sheet',
      until: /^Save as XLSX$/,
    },
    { name: 'skua-a-way-out', path: `${skuaA}/way-out`, as: 'designer', until: /^Apply \d+ changes to the draft$/ },
    { name: 'skua-b-panels', path: `${skuaB}/fabrication/panels`, as: 'designer' },
    { name: 'skua-b-cost', path: `${skuaB}/fabrication/cost`, as: 'designer' },
    { name: 'skua-b-panels-fabricator', path: `${skuaB}/fabrication/panels`, as: 'ostrel' },
    { name: 'skua-b-quotation', path: `${skuaB}/fabrication/quotation`, as: 'designer' },
    { name: 'skua-b-quotation-fabricator', path: `${skuaB}/fabrication/quotation`, as: 'ostrel' },
    { name: 'project-fabricator', path: skua, as: 'ostrel' },
    { name: 'skua-a-fabrication', path: `${skuaA}/fabrication`, as: 'designer' },
    { name: 'skua-b-fabrication-fabricator', path: `${skuaB}/fabrication`, as: 'ostrel' },
    { name: 'matrix-seen-by-team', path: `/companies/${scene.brackenfoldId}/matrix`, as: 'designer' },
    { name: 'own-matrix', path: `/companies/${scene.brackenfoldId}/matrix`, as: 'brackenfold' },
    { name: 'own-matrix-version', path: `/companies/${scene.brackenfoldId}/versions/matrix/1`, as: 'brackenfold' },
    { name: 'own-flex-tests', path: `/companies/${scene.brackenfoldId}/flex-tests`, as: 'brackenfold' },
    { name: 'own-shelf', path: `/companies/${scene.brackenfoldId}/shelf`, as: 'brackenfold' },
    { name: 'panels-seen-by-team', path: `/companies/${scene.brackenfoldId}/panels`, as: 'designer' },
    { name: 'rates-seen-by-team', path: `/companies/${scene.brackenfoldId}/rates`, as: 'designer' },
    { name: 'own-panels', path: `/companies/${scene.brackenfoldId}/panels`, as: 'brackenfold' },
    { name: 'own-rates', path: `/companies/${scene.brackenfoldId}/rates`, as: 'brackenfold' },
    { name: 'skua-b-item', path: `${skuaB}/checklist#item-bend-strain`, as: 'designer' },
    { name: 'skua-a-item-failed', path: `${skuaA}/checklist#item-opening-to-bend`, as: 'designer' },
    { name: 'new-revision', path: `${skua}/revisions/new`, as: 'designer' },
    { name: 'new-project', path: '/projects/new', as: 'designer' },
    { name: 'account', path: '/account', as: 'designer' },
    { name: 'catalogue', path: '/catalogue', as: 'designer' },
    { name: 'glossary', path: '/glossary', as: 'designer' },
    { name: 'workspace-catalogue-read-only', path: '/workspace/catalogue', as: 'designer' },
    { name: 'library', path: '/workspace/library', as: 'designer' },
    { name: 'skua-b-catalogue', path: `${skuaB}/catalogue`, as: 'designer' },
    { name: 'limits-seen-by-team', path: `/companies/${scene.brackenfoldId}/limits`, as: 'designer' },
    { name: 'company-seen-by-team', path: `/companies/${scene.brackenfoldId}`, as: 'designer' },
    { name: 'home-lead', path: '/', as: 'lead' },
    { name: 'home-filtered', path: '/?about=checklist', as: 'lead' },
    { name: 'home-found', path: '/?find=bend', as: 'lead' },
    { name: 'workspace-mail', path: '/workspace/mail', as: 'admin' },
    { name: 'mail-message', path: `/workspace/mail/${scene.mailId}`, as: 'admin' },
    { name: 'catalogue-delivered', path: '/catalogue?edition=delivered', as: 'lead' },
    { name: 'projects', path: '/projects', as: 'lead' },
    { name: 'questions', path: '/questions', as: 'lead' },
    { name: 'questions-fabricator', path: '/questions', as: 'brackenfold' },
    { name: 'project', path: skua, as: 'lead' },
    { name: 'invite', path: `${skua}/invite`, as: 'lead' },
    { name: 'issues', path: `/projects/${scene.pipitId}/issues`, as: 'lead' },
    { name: 'project-profiles', path: `${skua}/profiles`, as: 'lead' },
    { name: 'sign-off-policy', path: `${skua}/sign-off-policy`, as: 'lead' },
    { name: 'project-access', path: `${skua}/access`, as: 'lead' },
    { name: 'company-access', path: `/companies/${scene.brackenfoldId}/access`, as: 'brackenfold' },
    { name: 'capacities', path: `${skua}/capacities`, as: 'lead' },
    { name: 'project-profiles-read-only', path: `${skua}/profiles`, as: 'designer' },
    { name: 'proposal', path: `${skuaB}/proposals/${scene.proposalId}`, as: 'lead' },
    { name: 'meeting', path: `${skuaB}/meetings/${scene.meetingId}`, as: 'lead' },
    { name: 'compare', path: `${skua}/compare?from=revision:${scene.skuaA}&to=revision:${scene.skuaB}`, as: 'lead' },
    { name: 'compare-nothing-chosen', path: `${skua}/compare`, as: 'brackenfold' },
    { name: 'skua-b-sign-off-lead', path: `${skuaB}/sign-off`, as: 'lead' },
    { name: 'pipit-overview', path: pipitA, as: 'lead' },
    { name: 'pipit-sign-off', path: `${pipitA}/sign-off`, as: 'lead' },
    { name: 'pipit-artwork', path: `${pipitA}/artwork`, as: 'lead', until: /^Zoom in$/ },
    { name: 'pipit-trail', path: `${pipitA}/trail`, as: 'auditor' },
    { name: 'pipit-construction-read-only', path: `${pipitA}/construction`, as: 'observer' },
    { name: 'home-fabricator', path: '/', as: 'ostrel' },
    { name: 'skua-b-threads-fabricator', path: `${skuaB}/threads`, as: 'ostrel' },
    { name: 'skua-b-sign-off-fabricator', path: `${skuaB}/sign-off`, as: 'ostrel' },
    { name: 'own-limits', path: `/companies/${scene.brackenfoldId}/limits`, as: 'brackenfold' },
    { name: 'own-company', path: `/companies/${scene.brackenfoldId}`, as: 'brackenfold' },
    { name: 'companies', path: '/workspace/companies', as: 'admin' },
    { name: 'refused-sign-ins', path: '/workspace/refused-sign-ins', as: 'admin' },
    { name: 'signing-keys', path: '/workspace/signing-keys', as: 'admin' },
    { name: 'workspace-flex-tests', path: '/workspace/flex-tests', as: 'admin' },
    { name: 'workspace', path: '/workspace', as: 'admin' },
    { name: 'not-found', path: '/projects/none', as: 'admin' },
  ]
}

/** Width and height of a phone held upright, CSS pixels. */
export const PHONE = { width: 390, height: 844 } as const
export const DESKTOP = { width: 1280, height: 800 } as const
