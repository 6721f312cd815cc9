import { expect, it } from 'vitest'
import { formatLogLine, now, replaceClock } from '@/lib/config'

const AT = new Date('2026-03-02T08:00:00Z')

it('writes one JSON object per line, with errors spelled out', () => {
  const error = Object.assign(new Error('first line\nsecond line'), { code: 'E1' })
  const line = formatLogLine(AT, 'error', 'request failed', { id: 'r-1', error, count: 3n })
  expect(line).not.toContain('\n')
  expect(JSON.parse(line)).toMatchObject({
    at: '2026-03-02T08:00:00.000Z',
    level: 'error',
    event: 'request failed',
    id: 'r-1',
    count: '3',
    error: { name: 'Error', message: 'first line\nsecond line', code: 'E1' },
  })
})

it('does not trip over a circle', () => {
  const circle: Record<string, unknown> = {}
  circle.self = circle
  expect(JSON.parse(formatLogLine(AT, 'info', 'circle', { circle }))).toMatchObject({
    circle: { self: '[seen above]' },
  })
})

it('takes the time from the clock, which can be set', () => {
  const restore = replaceClock(() => AT)
  expect(now()).toEqual(AT)
  restore()
  expect(now().getTime()).toBeGreaterThan(AT.getTime())
})
