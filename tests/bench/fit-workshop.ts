import { HABITS, tally } from '#tests/support/fit-workshop.ts'

/* The virtual workshop, in numbers: makers of many habits who follow the advice of fit correction. */
const rings = Number(process.argv[2] ?? 500)
const only = process.argv[3]

const percent = (share: number): string => `${(100 * share).toFixed(1)} %`.padStart(8)
for (const habit of HABITS.filter(({ name }) => only === undefined || name.includes(only))) {
  const found = tally(habit, rings)
  console.log(
    `${habit.name.padEnd(26)} good ${percent(found.good)}, too deep ${percent(found.tooDeep)}, called good but not ${percent(found.toldGoodButNot)},`,
    `cannot be told ${percent(found.cannotBeTold)}; checks: median ${found.medianChecks}, most ${found.mostChecks}`,
  )
}
