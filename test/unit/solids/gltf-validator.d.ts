/** Of the validator, what the tests ask: it ships no types of its own. */
declare module 'gltf-validator' {
  export function validateBytes(bytes: Uint8Array): Promise<{
    readonly issues: { readonly messages: readonly unknown[] }
    readonly info: { readonly totalTriangleCount: number }
  }>
}
