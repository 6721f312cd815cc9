import { threadId } from 'node:worker_threads'
import type { JobHooks, JobKind } from '@/lib/jobs/kind'

const defineKind = <I, O>(kind: JobKind<I, O>): JobKind<I, O> => kind
const limits = { seconds: 30, memoryMib: 64 }

/** Kinds that behave badly, each in its own way. */
export const TEST_KINDS = {
  double: defineKind<number, number>({ limits, isLong: false, load: async () => (value) => value * 2 }),
  count: defineKind<number, string>({
    limits,
    isLong: true,
    load:
      async () =>
      (steps, { onProgress }: JobHooks) => {
        for (let at = 1; at <= steps; at += 1) onProgress(at / steps)
        return 'counted'
      },
  }),
  /** Tells what it is sure of before it is done. */
  tellFirst: defineKind<number, number>({
    limits,
    isLong: true,
    idleSeconds: 60,
    load:
      async () =>
      (value, { onFirst }: JobHooks) => {
        onFirst?.(value)
        return value + 1
      },
  }),
  /** Counts until it is asked to end, and hands over how far it came. */
  countOn: defineKind<null, number>({
    limits,
    isLong: true,
    load:
      async () =>
      (_input, { onProgress, isFinishAsked }: JobHooks) => {
        let counted = 0
        onProgress(0)
        do counted += 1
        while (!isFinishAsked())
        return counted
      },
  }),
  /** Tells its thread; one that is kept for good. */
  listen: defineKind<null, number>({
    limits,
    isLong: true,
    idleSeconds: Number.POSITIVE_INFINITY,
    load: async () => () => threadId,
  }),
  spin: defineKind<null, never>({
    limits: { ...limits, seconds: 0.5 },
    isLong: true,
    load:
      async () =>
      (_input, { onProgress }: JobHooks) => {
        onProgress(0)
        for (;;);
      },
  }),
  spinLong: defineKind<null, never>({
    limits,
    isLong: true,
    load:
      async () =>
      (_input, { onProgress }: JobHooks) => {
        onProgress(0)
        for (;;);
      },
  }),
  eat: defineKind<null, number>({
    limits,
    isLong: false,
    load: async () => () => {
      const eaten: number[][] = []
      for (;;) eaten.push(Array.from({ length: 100_000 }, (_, at) => at + eaten.length))
    },
  }),
  crash: defineKind<number, never>({ limits, isLong: false, load: async () => (code) => process.exit(code) }),
  refuse: defineKind<null, never>({
    limits,
    isLong: false,
    load: async () => () => {
      throw new RangeError('out of range on purpose')
    },
  }),
} as const
