/** The scales in which a temperature may be stated. The core computes in degrees Celsius. */
export const SCALES = ['celsius', 'fahrenheit'] as const
export type Scale = (typeof SCALES)[number]

/** Degrees Celsius of a temperature on a scale, exact by definition: (F − 32) / 1.8. */
export const toCelsius = (degrees: number, scale: Scale): number =>
  scale === 'celsius' ? degrees : (degrees - 32) / 1.8

/** A temperature in degrees Celsius, on another scale: 1.8 C + 32. */
export const inScale = (celsius: number, scale: Scale): number => (scale === 'celsius' ? celsius : celsius * 1.8 + 32)
