/** Closed forms that the trade uses, kept for comparison alone: none decides anything here. */
export const ETA = 376.730313668

/** Hammerstad and Jensen, IEEE MTT-S Digest 1980, p. 407, with their correction for thickness. */
export function hammerstadJensen(widthOverHeight: number, permittivity: number, thicknessOverHeight = 0) {
  const t = thicknessOverHeight
  const coth = (x: number) => 1 / Math.tanh(x)
  const du1 =
    t === 0 ? 0 : (t / Math.PI) * Math.log(1 + (4 * Math.E) / (t * coth(Math.sqrt(6.517 * widthOverHeight)) ** 2))
  const duR = (du1 / 2) * (1 + 1 / Math.cosh(Math.sqrt(permittivity - 1)))
  const u1 = widthOverHeight + du1
  const uR = widthOverHeight + duR
  const air = (u: number) => {
    const f = 6 + (2 * Math.PI - 6) * Math.exp(-((30.666 / u) ** 0.7528))
    return (ETA / (2 * Math.PI)) * Math.log(f / u + Math.sqrt(1 + (2 / u) ** 2))
  }
  const a = 1 + Math.log((uR ** 4 + (uR / 52) ** 2) / (uR ** 4 + 0.432)) / 49 + Math.log(1 + (uR / 18.1) ** 3) / 18.7
  const b = 0.564 * ((permittivity - 0.9) / (permittivity + 3)) ** 0.053
  const base = (permittivity + 1) / 2 + ((permittivity - 1) / 2) * (1 + 10 / uR) ** (-a * b)
  return { z0Ohm: air(uR) / Math.sqrt(base), effectivePermittivity: base * (air(u1) / air(uR)) ** 2 }
}

/** IPC-2141, as quoted by guides: microstrip, and a line between two planes. */
export const ipcMicrostrip = (w: number, h: number, t: number, er: number) =>
  (87 / Math.sqrt(er + 1.41)) * Math.log((5.98 * h) / (0.8 * w + t))
export const ipcStripline = (w: number, b: number, t: number, er: number) =>
  (60 / Math.sqrt(er)) * Math.log((1.9 * b) / (0.8 * w + t))

/** Wheeler 1978, recalled; printed with 30 Ω, which stands for η/4π. */
export function wheelerStripline(w: number, b: number, t: number, er: number, factor = 30): number {
  const x = t / b
  const m = 2 / (1 + (2 * x) / (3 * (1 - x)))
  const dw = (t / Math.PI) * (1 - 0.5 * Math.log((x / (2 - x)) ** 2 + ((0.0796 * x) / (w / b + 1.1 * x)) ** m))
  const q = (b - t) / (w + dw)
  const first = (8 * q) / Math.PI
  return (factor / Math.sqrt(er)) * Math.log(1 + ((4 * q) / Math.PI) * (first + Math.sqrt(first * first + 6.27)))
}

/** Embedded microstrip, two versions that circulate: over 60/√er' and 87/√(er'+1.41), er' = er(1-exp(-1.55 h1/h)). */
export function embeddedForms(w: number, h: number, t: number, coverHeight: number, er: number) {
  const permittivity = er * (1 - Math.exp((-1.55 * coverHeight) / h))
  return {
    of60: (60 / Math.sqrt(permittivity)) * Math.log((5.98 * h) / (0.8 * w + t)),
    of87: (87 / Math.sqrt(permittivity + 1.41)) * Math.log((5.98 * h) / (0.8 * w + t)),
  }
}

/** K(k)/K(k') by arithmetic and geometric means. */
export function ellipticRatio(k: number): number {
  const mean = (a: number, b: number): number => (Math.abs(a - b) < 1e-14 * a ? a : mean((a + b) / 2, Math.sqrt(a * b)))
  return mean(1, k) / mean(1, Math.sqrt(1 - k * k))
}

/** Cohn 1960, recalled: lines one above the other between planes, whose edges do not see each other. Lengths in plane spacings. */
export function cohnBroadside(width: number, gap: number, permittivity: number) {
  const widthOf = (k: number) => {
    const r = Math.sqrt((k - gap) / (1 / k - gap))
    return (2 / Math.PI) * (Math.atanh(r) - gap * Math.atanh(r / k))
  }
  let [low, high] = [gap, 1]
  for (let step = 0; step < 200; step += 1) {
    const middle = (low + high) / 2
    if (widthOf(middle) < width) low = middle
    else high = middle
  }
  const k = low
  return {
    evenOhm: ETA / (2 * Math.sqrt(permittivity) * ellipticRatio(k)),
    oddOhm: (ETA * Math.PI * gap) / (4 * Math.sqrt(permittivity) * Math.atanh(k)),
  }
}

/** A wire of 0.567 w + 0.67 t between two planes: Printed Circuits Handbook, 7th ed., 66.6.2, formula body in its usual form. */
export function wireBetweenPlanes(w: number, b: number, t: number, er: number) {
  const wire = 0.567 * w + 0.67 * t
  return { wire, z0Ohm: (60 / Math.sqrt(er)) * Math.log((4 * b) / (Math.PI * wire)) }
}
