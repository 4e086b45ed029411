/** Uniform numbers between 0 and 1, the same ones for the same seed (xorshift32, which is enough for tests). */
export function uniforms(seed: number): () => number {
  let state = (Math.imul(seed, 2_654_435_761) ^ 0x9e3779b9) >>> 0 || 1
  const next = (): number => {
    state ^= state << 13
    state >>>= 0
    state ^= state >>> 17
    state ^= state << 5
    state >>>= 0
    return (state + 0.5) / 4_294_967_296
  }
  for (let warm = 0; warm < 8; warm++) next()
  return next
}

/** Standard normal numbers (Box and Muller 1958). */
export const normals = (uniform: () => number) => (): number =>
  Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform())
