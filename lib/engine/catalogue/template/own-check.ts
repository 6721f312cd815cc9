import type { EvaluationContext } from '../../context'
import { findFieldPattern, type KindField, listKindFields } from '../../design'
import type { Limit, Outcome, QuantityRange } from '../../results'
import { decide, notComputed } from '../decide'
import { type FieldPlace, type OnlyWhere, readFieldPlaces } from '../field-places'

/** A number of the design held against a limit of the workspace: what makes an own item computed. */
export interface OwnCheck {
  /** Place of the field, `*` for the entries of a list: `bends.*.insideRadiusMm`. */
  readonly field: string
  /** Null where every entry counts. */
  readonly where: OnlyWhere | null
  readonly sense: 'at-least' | 'at-most' | 'within'
  /** In the field's unit; the lower end where the sense is `within`. */
  readonly value: number
  /** Upper end where the sense is `within`, else null. */
  readonly upperValue: number | null
}

/**
 * Every place of the field by the verdict rule of all items: a number that misses the limit fails, one that misses it within its own tolerance has
 * a thin margin, an empty one is not computed.
 *
 * @param ground  where the rule comes from, as the workspace says it
 */
export function checkOwn(context: EvaluationContext, check: OwnCheck, ground: string): Outcome[] {
  const { places, otherwise } = readFieldPlaces(context, check.field, check.where)
  const limit = makeOwnLimit(check, ground)
  return [
    ...otherwise,
    ...places.map((place): Outcome => {
      const { value, path, label } = place
      if (typeof value !== 'number') return notComputed(path, label, place.places, 'typed')
      const range = readTolerance(value, check.field, place)
      return decide({
        value,
        limit,
        places: place.places,
        what: label,
        equation: 'comparison with the limit of the workspace',
        isTyped: true,
        ...(range === null ? {} : { range }),
      })
    }),
  ]
}

function makeOwnLimit({ field, sense, value, upperValue }: OwnCheck, ground: string): Limit {
  return {
    key: `own:${field}`,
    value,
    ...(sense === 'within' && upperValue !== null ? { upperValue } : {}),
    unit: findFieldPattern(field)?.node.unit ?? 'ratio',
    sense,
    owner: { kind: 'workspace', name: ground },
    sourceKey: 'workspaceRule',
  }
}

/** Fields whose tolerance stands beside them in the same entry. */
const TOLERANCES: Readonly<Record<string, { readonly under: string; readonly over: string }>> = {
  'construction.layers.*.thicknessUm': { under: 'toleranceMinusUm', over: 'tolerancePlusUm' },
  'bends.*.insideRadiusMm': { under: 'radiusToleranceMm', over: 'radiusToleranceMm' },
}

function readTolerance(value: number, field: string, { entry }: FieldPlace): QuantityRange | null {
  const names = Object.hasOwn(TOLERANCES, field) ? TOLERANCES[field] : undefined
  const under = names === undefined ? undefined : entry?.[names.under]
  const over = names === undefined ? undefined : entry?.[names.over]
  return typeof under === 'number' && typeof over === 'number' ? { low: value - under, high: value + over } : null
}

/** The kind that a rule is narrowed to, as the dictionary has it; null where it has none of that name or value. */
export function findKind(field: string, { field: kind, value }: OnlyWhere): KindField | null {
  const found = listKindFields(field).find((candidate) => candidate.field === kind)
  return found !== undefined && Object.hasOwn(found.choices, value) ? found : null
}
