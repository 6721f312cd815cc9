import { ZONE_FIELDS, type Zone } from '@/lib/engine'
import { tidy } from '@/lib/engine/numerics'
import { getShownUnit, keptLength, type LengthUnit, parseLength } from '@/lib/engine/units'
import { type Read, readChoice, readMark, withAssumed } from './cells'
import type { ZoneFacts } from './rows'

type Fact = Exclude<keyof ZoneFacts, 'assumed'>

/** Lines above the layers, one for each fact that a sheet states of its zones: title, unit that the design keeps it in, and its mark. */
export const ZONE_ROWS = {
  kind: { title: 'Zone kind', kept: null, mark: 'kind' },
  lengthMm: { title: 'Zone length', kept: 'mm', mark: 'lengthMm' },
  widthMm: { title: 'Zone width', kept: 'mm', mark: 'widthMm' },
  statedThicknessUm: { title: 'Stated thickness', kept: 'um', mark: null },
  statedToleranceUm: { title: 'Stated tolerance', kept: 'um', mark: null },
  connectorMinUm: { title: 'Connector minimum', kept: 'um', mark: null },
  connectorMaxUm: { title: 'Connector maximum', kept: 'um', mark: null },
} as const satisfies Readonly<
  Record<Fact, { readonly title: string; readonly kept: 'um' | 'mm' | null; readonly mark: string | null }>
>

/** Says of a zone's layers that nobody confirmed which are there. */
export const PRESENCE_ROW = { title: 'Zone layers', mark: 'presence' } as const

export const ZONE_ROW_KEYS = Object.keys(ZONE_ROWS) as readonly Fact[]

/** @param unit  of a number that carries none: thickness as it is, plan dimensions as they are read beside it */
export function readZoneFact(fact: Fact, text: string, unit: LengthUnit): Read<Zone['kind'] | number> {
  const { kept } = ZONE_ROWS[fact]
  if (kept === null) return readChoice(text, ZONE_FIELDS.kind.choices)
  const parsed = parseLength(text, getShownUnit(kept, unit))
  return parsed.ok
    ? { ok: true, value: tidy(keptLength(parsed.valueUm, 'um', kept)) }
    : { ok: false, reason: parsed.message }
}

/** What the zone holds, by line; empty where it states nothing. */
export function writeZoneFact(
  zone: Zone,
  fact: Fact,
  assumed: readonly string[],
  digits: (value: number, kept: 'um' | 'mm') => string,
): string {
  const { kept, mark } = ZONE_ROWS[fact]
  const isAssumed = mark !== null && assumed.includes(`zones.${zone.id}.${mark}`)
  const value = readFact(zone, fact)
  if (value === null) return ''
  return withAssumed(kept === null ? ZONE_FIELDS.kind.choices[zone.kind] : digits(value as number, kept), isAssumed)
}

function readFact(zone: Zone, fact: Fact): number | string | null {
  if (fact === 'connectorMinUm') return zone.connectorWindow?.minUm ?? null
  if (fact === 'connectorMaxUm') return zone.connectorWindow?.maxUm ?? null
  return zone[fact]
}

/** The facts of one zone out of its cells, by line. */
export function readZoneFacts(
  cells: ReadonlyMap<Fact | 'presence', string>,
  unit: LengthUnit,
  refuse: (fact: Fact, reason: string) => void,
): ZoneFacts {
  const facts: Record<string, unknown> = {}
  const assumed: string[] = []
  for (const [fact, cell] of cells) {
    const { text, isAssumed } = readMark(cell)
    if (fact === 'presence') {
      if (isAssumed) assumed.push(PRESENCE_ROW.mark)
      continue
    }
    const { mark, kept } = ZONE_ROWS[fact]
    if (isAssumed && mark !== null) assumed.push(mark)
    if (text === '') {
      if (kept !== null) facts[fact] = null
      continue
    }
    const reading = readZoneFact(fact, text, unit)
    if (reading.ok) facts[fact] = reading.value
    else refuse(fact, reading.reason)
  }
  const { connectorMinUm: min, connectorMaxUm: max } = facts as Partial<ZoneFacts>
  if ((min ?? null) === null && (max ?? null) !== null) refuse('connectorMinUm', 'is empty: one end alone is no window')
  if ((min ?? null) !== null && (max ?? null) === null) refuse('connectorMaxUm', 'is empty: one end alone is no window')
  return { ...(facts as Omit<ZoneFacts, 'assumed'>), assumed }
}
