import { asResult, getUnitSymbol } from '@/lib/engine/units'
import { FAMILY_NAMES } from '../construction-family'
import { findChoice } from './dictionary'
import type { ParameterUnit, TradeParameter } from './parameter'
import type { MatrixRow } from './row'
import type { CapabilityVerdict } from './verdict'

/** A number as people write it in the parameter's unit: what was typed as it is, what was computed with four digits. */
export function formatParameterNumber(unit: ParameterUnit, value: number): string {
  return asResult(value, unit === 'ratio' ? 'aspect-ratio' : unit === 'choice' ? 'count' : unit)
}

export function formatParameterValue(parameter: TradeParameter, value: number | string): string {
  if (typeof value === 'number') return formatParameterNumber(parameter.unit, value)
  const known = findChoice(parameter, value)
  return parameter.choices.find((choice) => choice.value === known)?.name ?? value
}

/** A limit as the matrix states it; null is none. */
export function formatParameterLimit(parameter: TradeParameter, limit: MatrixRow['comfortable']): string | null {
  if (limit === null) return null
  if (typeof limit !== 'number') return limit.map((choice) => formatParameterValue(parameter, choice)).join(', ')
  const sign = parameter.direction === 'smaller-is-harder' ? '≥' : '≤'
  return `${sign} ${formatParameterNumber(parameter.unit, limit)}`
}

/** `4 to 8 layers, foil up to 18 um, rigid-flex`; empty where a row holds for all designs. */
export function describeConditions(row: MatrixRow): string {
  const range = (from: number | null, to: number | null, unit: string) => {
    if (from === null) return to === null ? null : `up to ${to}${unit}`
    if (to === null) return `from ${from}${unit}`
    return from === to ? `${from}${unit}` : `${from} to ${to}${unit}`
  }
  const layers = range(row.layersFrom, row.layersTo, row.layersTo === 1 ? ' layer' : ' layers')
  const foil = range(row.foilFromUm, row.foilToUm, ` ${getUnitSymbol('um')}`)
  const family = row.construction === null ? null : FAMILY_NAMES[row.construction]
  return [layers, foil === null ? null : `foil ${foil}`, family].filter((part) => part !== null).join(', ')
}

/** `widen 0.075 mm to 0.1 mm`: to be comfortable, and, from outside, to be buildable at all. */
export function describeChange(
  parameter: TradeParameter,
  value: number | string,
  verdict: CapabilityVerdict,
  row: MatrixRow,
): string | null {
  if (verdict === 'comfortable' || verdict === 'not-stated') return null
  const is = formatParameterValue(parameter, value)
  if (parameter.isNeed === true)
    return verdict === 'stretch'
      ? null
      : `${is} is what the part needs: ask whether it can be agreed, or ask another fabricator`
  if (parameter.direction === 'one-of') {
    const list = (limit: MatrixRow['comfortable']) => formatParameterLimit(parameter, limit)
    const [easy, hard] = [list(row.comfortable), list(row.stretch)]
    if (easy === null)
      return hard === null || verdict === 'stretch' ? null : `choose ${hard} in place of ${is} (stretch work)`
    const atLeast = verdict === 'outside' && hard !== null ? `, or for stretch work ${hard}` : ''
    return `choose ${easy} in place of ${is}${atLeast}`
  }
  const to = (limit: MatrixRow['comfortable']) =>
    typeof limit === 'number' ? formatParameterNumber(parameter.unit, limit) : null
  const [easy, hard] = [to(row.comfortable), to(row.stretch)]
  if (verdict === 'stretch') return easy === null ? null : `${parameter.verb}: ${is} to ${easy}`
  if (hard === null || hard === easy) return `${parameter.verb}: ${is} to ${easy}`
  return easy === null
    ? `${parameter.verb}: ${is} to ${hard} (stretch work)`
    : `${parameter.verb}: ${is} to ${hard} (stretch work) or ${easy}`
}
