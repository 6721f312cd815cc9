/** 1 lbf/in2 in pascals: 4.4482216152605 N over (0.0254 m)^2, exact by definition. Handbooks print moduli and stresses in psi. */
const PASCAL_PER_PSI = 4.4482216152605 / 0.0254 ** 2

export const gpaFromPsi = (modulusPsi: number): number => modulusPsi * PASCAL_PER_PSI * 1e-9

export const psiFromGpa = (modulusGpa: number): number => (modulusGpa * 1e9) / PASCAL_PER_PSI
