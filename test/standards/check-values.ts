import { describe, expect, it } from 'vitest'
import cases from './check-values.json'
import { findWaiting } from './waiting'

/** One published or exact check value. Numbers are printed to eight digits; units are in the names. */
export interface CheckCase {
  id: string
  topic: string
  inputs: Record<string, unknown>
  expected: Record<string, unknown>
  /** `rel` and `abs` hold for every expected number; another key holds for the fields that start with its word. */
  tolerance: Readonly<Record<string, number>> & { rel?: number; abs?: number }
  source: string
  sourceKind: string
  note: string
}

export const CHECK_CASES = cases as unknown as readonly CheckCase[]

type Handler = (check: CheckCase) => void

/** The file prints eight significant digits, so an expected value may be off by half of its last one. */
const PRINTED_DIGITS = 8

/**
 * Runs every check value of a topic through the handler whose pattern fits its id. A value that no handler takes fails:
 * none can be left out unnoticed. The title of each test carries the source.
 */
export function checkTopic(topic: string, handlers: readonly [RegExp, Handler][]): void {
  const ofTopic = CHECK_CASES.filter((each) => each.topic === topic)
  describe(topic, () => {
    it('has check values', () => expect(ofTopic.length).toBeGreaterThan(0))
    it('no value that waits has a handler', () => {
      const handled = ofTopic.filter(({ id }) => findWaiting(id) !== null && handlers.some(([at]) => at.test(id)))
      expect(handled.map(({ id }) => id)).toEqual([])
    })
    for (const check of ofTopic) {
      if (findWaiting(check.id) !== null) continue
      it(`${check.id} [${check.sourceKind}] ${check.source}`, () => {
        const handler = handlers.find(([pattern]) => pattern.test(check.id))?.[1]
        if (handler === undefined) throw new Error(`no test handles check value ${check.id}`)
        handler(check)
      })
    }
  })
}

/** A number among the inputs. */
export function input(check: CheckCase, key: string): number {
  return requireNumeric(check.inputs[key], `${check.id}: inputs.${key}`)
}

/** A list of numbers among inputs or expected values. */
export function listOf(record: Record<string, unknown>, key: string): number[] {
  const list = record[key]
  if (!Array.isArray(list)) throw new Error(`${key} is not a list`)
  return list.map((each, index) => requireNumeric(each, `${key}[${index}]`))
}

/** Compares one expected value with what the engine gives, within the tolerance of the case. */
export function expectValue(check: CheckCase, key: string, actual: number): void {
  expectNear(actual, requireNumeric(check.expected[key], `${check.id}: expected.${key}`), check.tolerance, key)
}

/** Compares two numbers within a relative or absolute tolerance, never tighter than the printed digits allow. */
export function expectNear(
  actual: number,
  expected: number,
  { rel = 0, abs = 0 }: { rel?: number; abs?: number },
  name = 'value',
): void {
  const lastDigit = expected === 0 ? 0 : 10 ** (Math.floor(Math.log10(Math.abs(expected))) + 1 - PRINTED_DIGITS)
  const allowed = Math.max(rel * Math.abs(expected), abs, lastDigit / 2) * (1 + 1e-9)
  expect(Math.abs(actual - expected), `${name}: ${actual} against ${expected}`).toBeLessThanOrEqual(allowed)
}

function requireNumeric(value: unknown, name: string): number {
  if (typeof value !== 'number') throw new Error(`${name} is not a number`)
  return value
}
