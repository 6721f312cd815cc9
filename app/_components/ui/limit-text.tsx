'use client'

import { type DecidedOutcome, type DecidingEnd, LIMIT_SENSE_WORDS, type Limit } from '@/lib/engine/results'
import { QuantityText } from './quantity'

const SIGNS: Record<Exclude<Limit['sense'], 'within'>, string> = { 'at-most': '≤', 'at-least': '≥', equals: '=' }

type Window = Pick<Limit, 'value' | 'upperValue' | 'unit'>

function WindowText({ limit: { value, upperValue, unit } }: { limit: Window }) {
  return (
    <>
      <QuantityText quantity={{ value, unit }} /> to <QuantityText quantity={{ value: upperValue ?? value, unit }} />
    </>
  )
}

/** A limit in words, with both ends where it is a window. */
export function LimitText({ limit }: { limit: Limit }) {
  return (
    <>
      {LIMIT_SENSE_WORDS[limit.sense]}{' '}
      {limit.sense === 'within' ? (
        <WindowText limit={limit} />
      ) : (
        <QuantityText quantity={{ value: limit.value, unit: limit.unit }} />
      )}
    </>
  )
}

type Compared = Pick<DecidedOutcome, 'value' | 'limit' | 'decidingEnd'>

/** The number that decides: of a window that is missed, what misses it, and not the nominal value that lies inside. */
export function DecidingValue({ outcome: { value, limit, decidingEnd } }: { outcome: Compared }) {
  return decidingEnd !== undefined && decidingEnd.margin < 0 ? (
    <QuantityText quantity={{ value: decidingEnd.value, unit: limit.unit }} />
  ) : (
    <QuantityText quantity={value} />
  )
}

/** The limit that decides, in signs: of a window that is missed the end that is missed, with the window beside it. */
export function DecidingLimit({ outcome: { limit, decidingEnd } }: { outcome: Compared }) {
  if (limit.sense !== 'within') {
    return (
      <>
        {SIGNS[limit.sense]} <QuantityText quantity={{ value: limit.value, unit: limit.unit }} />
      </>
    )
  }
  if (decidingEnd === undefined || decidingEnd.margin >= 0) return <WindowText limit={limit} />
  return (
    <>
      {decidingEnd.end === 'lower' ? '≥' : '≤'}{' '}
      <QuantityText quantity={{ value: decidingEnd.limit, unit: limit.unit }} />
      <span className="block small muted">
        window <WindowText limit={limit} />
      </span>
    </>
  )
}

/** `lower end: 265.8 µm against 270 µm`: which end of a window decides, and by what. Nothing for other limits. */
export function DecidingEndText({ limit, decidingEnd }: { limit: Limit; decidingEnd: DecidingEnd | undefined }) {
  if (decidingEnd === undefined) return null
  const { end, value, limit: at } = decidingEnd
  return (
    <span className="block small">
      {end} end: <QuantityText quantity={{ value, unit: limit.unit }} /> against{' '}
      <QuantityText quantity={{ value: at, unit: limit.unit }} />
    </span>
  )
}
