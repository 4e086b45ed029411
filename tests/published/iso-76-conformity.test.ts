// ISO 76: its ratings hold for groove radii up to 0.52 (inner) and 0.53 (outer) of the ball, as a bearing trader's page
// quotes it (nck-bearings.com/en/list-1-47); standard not seen. The default takes the upper end.
import { expect, test } from 'vitest'
import { CONFORMITY } from '#shared/bearing/defaults.ts'

test('the usual groove radius is 0.53 of the ball', () => {
  expect(CONFORMITY).toBe(0.53)
})
