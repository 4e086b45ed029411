/** Words of the step that asks for the wood and the place. */
export const PLACE = {
  name: 'Your own name for the bearing',
  parts: {
    outerRing: 'Wood of the outer ring',
    innerRing: 'Wood of the inner ring',
    plates: 'Wood of the plates',
    cage: 'Wood of the cage',
  },
  elements: (many: string) => `Wood of the ${many}`,
  wood: 'Wood',
  construction: 'How it is cut or built',
  unknown: 'not chosen',
  unknownMovement: (wood: string) => `${wood} (movement not known)`,
  air: 'Relative humidity, in %',
  today: 'today, in the workshop',
  driest: 'in the driest time',
  dampest: 'in the dampest time',
  temperature: 'temperature',
  units: { humidity: '%', temperature: '°C' },
  ask: 'Choose the wood and fill in the three humidities, or today and all twelve months: then the year is worked out.',
  correct: 'Correct the field marked in red: then the year is worked out.',
  byMonth: 'The year month by month',
  monthHint:
    'Relative humidity in %, and the temperature in °C (20 where it is left empty). All twelve months take the place of the driest and the dampest time.',
  noMonths: 'Go back to the driest and the dampest time',
  humidity: 'humidity',
  humidityOf: 'Humidity',
  year: 'The year',
  apply: 'Take this advice',
  runs: 'run then',
  green: 'Green: so many of a hundred bearings run in that month. The full height is all of them.',
} as const

export const STATE_NAMES: Readonly<Record<string, string>> = {
  today: 'today',
  driest: 'driest',
  dampest: 'dampest',
}

export const MONTH_NAMES = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
] as const
