/** Put in by run.mjs: where a bundle lies says nothing about where it was made from. */
declare const BENCH_ROOT: string

/** Address of the checkout's root folder. */
export const ROOT = new URL(BENCH_ROOT)
