import { saveSheet } from '@/lib/data'
import type { ShelfContent, ShelfRow } from '@/lib/fabrication'
import type { Workspace } from './people'
import { SKUA_B_DAYS } from './planned-dates'
import type { Stage } from './stage'

const NOTHING: Omit<ShelfRow, 'material' | 'thicknessUm'> = {
  foil: null,
  foilUm: null,
  foilSides: null,
  adhesive: null,
  adhesiveUm: null,
  form: 'sheet',
  widthMm: null,
  onShelf: true,
  leadTimeDays: null,
  minimumOrderM2: null,
  note: '',
}

const sheet = (material: string, thicknessUm: number, more: Partial<ShelfRow> = {}): ShelfRow => ({
  ...NOTHING,
  material,
  thicknessUm,
  ...more,
})
const onRoll = (widthMm: number) => ({ form: 'roll' as const, widthMm })
const clad = (thicknessUm: number, foilUm: number, more: Partial<ShelfRow> = {}): ShelfRow =>
  sheet('pi-base-adhesiveless', thicknessUm, { foil: 'copper-ra', foilUm, foilSides: 2, ...onRoll(500), ...more })
const coverlay = (adhesiveUm: number, more: Partial<ShelfRow> = {}, filmUm = 25): ShelfRow =>
  sheet('pi-coverlay', filmUm, { adhesive: 'acrylic-adhesive', adhesiveUm, ...onRoll(500), ...more })
const laminate = (thicknessUm: number, foilUm: number): ShelfRow =>
  sheet('fr4-laminate', thicknessUm, { foil: 'copper-ed', foilUm, foilSides: 2 })

const BUILD_TIME_DAYS = 28

/** Days that a material takes, so that of Skua's need date the latest order date is a week and a half from now. */
const makeLeadTimeDays = () => -SKUA_B_DAYS.need - BUILD_TIME_DAYS - 10

function makeBrackenfoldShelf(): ShelfContent {
  return {
    buildTimeDays: BUILD_TIME_DAYS,
    rows: [
      clad(25, 17.1),
      clad(25, 9, { note: 'For fine lines.' }),
      clad(25, 12, { onShelf: false, leadTimeDays: 42, minimumOrderM2: 25 }),
      clad(50, 17.1),
      coverlay(25),
      coverlay(50),
      coverlay(20, {
        onShelf: false,
        leadTimeDays: makeLeadTimeDays(),
        minimumOrderM2: 50,
        note: 'Coated to order.',
      }),
      coverlay(20, { note: 'For dynamic hinges.' }, 12.5),
      sheet('pi-coverlay', 25, { adhesive: 'epoxy-adhesive', adhesiveUm: 20, ...onRoll(500) }),
      sheet('acrylic-adhesive', 25, onRoll(500)),
      sheet('acrylic-adhesive', 50, onRoll(500)),
      sheet('no-flow-prepreg-epoxy', 65),
      sheet('no-flow-prepreg-epoxy', 100),
      laminate(150, 17.1),
      laminate(100, 17.1),
      laminate(200, 35),
      sheet('solder-mask-rigid', 25),
      sheet('pi-stiffener', 125),
      sheet('pi-stiffener', 175),
      sheet('fr4-laminate', 400),
    ],
  }
}

const OSTREL_SHELF: ShelfContent = {
  buildTimeDays: 35,
  rows: [
    clad(25, 12),
    clad(25, 17.1),
    coverlay(25),
    coverlay(20, { onShelf: false, leadTimeDays: 21, minimumOrderM2: 20 }),
    coverlay(20, { onShelf: false, leadTimeDays: 21, minimumOrderM2: 20 }, 12.5),
    sheet('acrylic-adhesive', 25, onRoll(500)),
    sheet('acrylic-adhesive', 50, onRoll(500)),
    sheet('no-flow-prepreg-epoxy', 65, { onShelf: false, leadTimeDays: 14 }),
    sheet('fr4-laminate', 150, {
      foil: 'copper-ed',
      foilUm: 17.1,
      foilSides: 1,
      onShelf: false,
      leadTimeDays: 10,
    }),
    sheet('solder-mask-rigid', 25),
    sheet('pi-stiffener', 175, { onShelf: false, leadTimeDays: 14 }),
    sheet('pi-stiffener', 200),
    sheet('fr4-laminate', 400),
  ],
}

/** What both fabricators hold. Of Skua B something must be ordered at Brackenfold now, and something on the shelf would do. */
export async function setShelves({ carryOut }: Stage, { people, companies }: Workspace): Promise<void> {
  const sheets = [
    ['brackenfold', '2026-07-06', makeBrackenfoldShelf()],
    ['ostrel', '2026-06-15', OSTREL_SHELF],
  ] as const
  for (const [fabricator, issuedOn, content] of sheets) {
    await carryOut(`save the shelf of ${fabricator}`, () =>
      saveSheet(people[fabricator], {
        companyId: companies[fabricator],
        kind: 'shelf',
        seenVersion: 0,
        issuedOn,
        note: '',
        content,
      }),
    )
  }
}
