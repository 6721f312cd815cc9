import { saveSheet } from '@/lib/data'
import type { PanelFormatsContent, ProcessRatesContent } from '@/lib/fabrication'
import type { Workspace } from './people'
import type { Stage } from './stage'

const EVERY_TURN = [0, 90, 180, 270] as const

/** Brackenfold runs large panels and half ones for what has to register closely. */
const BRACKENFOLD_FORMATS: PanelFormatsContent = {
  formats: [
    {
      id: 'production',
      name: 'Production panel',
      widthMm: 457.2,
      heightMm: 609.6,
      marginLeftMm: 20,
      marginRightMm: 20,
      marginTopMm: 22,
      marginBottomMm: 22,
      spacingMm: 2,
      allowedRotationsDeg: [...EVERY_TURN],
      foilRollingDirection: 'along-height',
      note: '18 × 24 in. Coupons and tooling holes lie in the margins.',
    },
    {
      id: 'half',
      name: 'Half panel',
      widthMm: 304.8,
      heightMm: 457.2,
      marginLeftMm: 12,
      marginRightMm: 12,
      marginTopMm: 15,
      marginBottomMm: 15,
      spacingMm: 2,
      allowedRotationsDeg: [...EVERY_TURN],
      foilRollingDirection: 'along-height',
      note: '12 × 18 in. For samples, and where layers have to meet closely.',
    },
  ],
}

/** Ostrel cuts its sheets from the roll. */
const OSTREL_FORMATS: PanelFormatsContent = {
  formats: [
    {
      id: 'roll-cut',
      name: 'Sheet from the roll',
      widthMm: 250,
      heightMm: 400,
      marginLeftMm: 8,
      marginRightMm: 8,
      marginTopMm: 10,
      marginBottomMm: 10,
      spacingMm: 2,
      allowedRotationsDeg: [...EVERY_TURN],
      foilRollingDirection: 'along-height',
      note: '',
    },
    {
      id: 'wide',
      name: 'Wide sheet',
      widthMm: 305,
      heightMm: 610,
      marginLeftMm: 10,
      marginRightMm: 10,
      marginTopMm: 12,
      marginBottomMm: 12,
      spacingMm: 1.8,
      allowedRotationsDeg: [...EVERY_TURN],
      foilRollingDirection: 'along-height',
      note: 'For two-layer flex without rigid parts we prefer this one.',
    },
  ],
}

/** Lines that Brackenfold states itself; the others of the table stay illustrative. */
const BRACKENFOLD_RATES: ProcessRatesContent = {
  steps: [
    { stepId: 'coverlay-laser', rateIndex: 21, setUpIndex: 70, yieldFraction: 0.985 },
    { stepId: 'final-press', rateIndex: 19.5, setUpIndex: 30, yieldFraction: 0.98 },
    { stepId: 'test', rateIndex: 0.12, setUpIndex: 150, yieldFraction: null },
  ],
  registration: [{ demand: 'tight', extraMarginMm: 12, extraSpacingMm: 1.5, yieldFraction: 0.93 }],
}

/** Panels and rates of both fabricators; Ostrel states no rates. */
export async function setPanelsAndRates({ carryOut }: Stage, { people, companies }: Workspace): Promise<void> {
  const sheets = [
    ['brackenfold', 'panel-formats', '2026-07-01', 'Panels as run since the new press.', BRACKENFOLD_FORMATS],
    ['brackenfold', 'process-rates', '2026-07-01', 'Where we differ from the usual table.', BRACKENFOLD_RATES],
    ['ostrel', 'panel-formats', '2026-06-15', '', OSTREL_FORMATS],
  ] as const
  for (const [fabricator, kind, issuedOn, note, content] of sheets) {
    await carryOut(`save the ${kind} of ${fabricator}`, () =>
      saveSheet(people[fabricator], {
        companyId: companies[fabricator],
        kind,
        seenVersion: 0,
        issuedOn,
        note,
        content,
      }),
    )
  }
}
