import {
  callByName,
  type Evaluation,
  formatComputedReading,
  type ItemResult,
  LIFE_CAUTION_SHORT,
  type Reading,
  readBendLife,
  readBendStrain,
} from '@/lib/engine'
import { asComputed, type ComputedFigure } from '@/lib/engine/units'

/** An item whose verdict is another now. Null where the item was not part of the results. */
export interface VerdictMove {
  readonly itemId: string
  readonly before: ItemResult['verdict'] | null
  readonly after: ItemResult['verdict'] | null
  /** The later headline; the earlier one where the item is gone. */
  readonly headline: string
}

/** A number of a bend or a zone that moved. */
export interface NumberMove {
  readonly subject: string
  readonly quantity: string
  readonly before: string
  readonly after: string
}

/** Items whose verdicts moved between two evaluations, in the order of the later one. */
export function listVerdictMoves(before: Evaluation | null, after: Evaluation | null): VerdictMove[] {
  const old = new Map((before?.items ?? []).map((item) => [item.itemId, item]))
  const moves: VerdictMove[] = []
  for (const item of after?.items ?? []) {
    const previous = old.get(item.itemId) ?? null
    old.delete(item.itemId)
    if (previous?.verdict === item.verdict) continue
    moves.push({ itemId: item.itemId, before: previous?.verdict ?? null, after: item.verdict, headline: item.headline })
  }
  for (const item of old.values()) {
    moves.push({ itemId: item.itemId, before: item.verdict, after: null, headline: item.headline })
  }
  return moves
}

/** Copper strain and life of bends and thickness of zones that are other numbers now. */
export function listNumberMoves(before: Evaluation | null, after: Evaluation | null): NumberMove[] {
  const moves: NumberMove[] = []
  const addWords = (subject: string, quantity: string, a: string, b: string) => {
    if (a !== b) moves.push({ subject, quantity, before: a, after: b })
  }
  const formatMoved = (reading: Reading | null, figure: ComputedFigure): string =>
    reading === null ? 'not computed' : formatComputedReading(reading, figure)
  const add = (subject: string, quantity: string, a: number | null, b: number | null, figure: ComputedFigure) => {
    const write = (value: number | null) => (value === null ? 'not computed' : asComputed(value, figure))
    addWords(subject, quantity, write(a), write(b))
  }
  const zones = new Map((before?.zones ?? []).map((zone) => [zone.zoneId, zone]))
  for (const zone of after?.zones ?? []) {
    const previous = zones.get(zone.zoneId)
    if (previous !== undefined)
      add(callByName('zone', zone.name), 'thickness', previous.thicknessUm, zone.thicknessUm, 'thicknessUm')
  }
  const bends = new Map((before?.bends ?? []).map((bend) => [bend.bendId, bend]))
  for (const bend of after?.bends ?? []) {
    const previous = bends.get(bend.bendId)
    if (previous === undefined) continue
    const subject = callByName('bend', bend.name)
    addWords(
      subject,
      'copper strain',
      formatMoved(readBendStrain(previous), 'strainPct'),
      formatMoved(readBendStrain(bend), 'strainPct'),
    )
    addWords(
      subject,
      `life at the survival percentile (${LIFE_CAUTION_SHORT})`,
      formatMoved(readBendLife(previous), 'lifeCycles'),
      formatMoved(readBendLife(bend), 'lifeCycles'),
    )
  }
  return moves
}
