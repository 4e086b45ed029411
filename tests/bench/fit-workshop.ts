import { writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { toSvg } from '#src/drawings/writers/svg.ts'
import { HABITS, missedMarks, tally } from '#tests/support/fit-workshop.ts'
import { workshopPicture } from './fit-picture.ts'

/*
 * The simulated workshop in numbers and as a picture: makers of many habits who follow the advice of fit correction.
 * `node tests/bench/fit-workshop.ts RINGS WORD PICTURE`: only habits whose name holds the word; the picture's path.
 */
const rings = Number(process.argv[2] ?? 500)
const only = process.argv[3] ?? ''
const path = process.argv[4] ?? join(tmpdir(), 'racewright-workshop.svg')

const percent = (share: number): string => `${(100 * share).toFixed(1)} %`.padStart(8)
const tallies = HABITS.filter(({ name }) => name.includes(only)).map((habit) => {
  const found = tally(habit, rings)
  const missed = missedMarks(found)
  console.log(
    `${missed.length === 0 ? 'met   ' : 'missed'} ${habit.name.padEnd(28)} good ${percent(found.good)}, too deep ${percent(found.tooDeep)}, called good but not ${percent(found.toldGoodButNot)},`,
    `cannot be told ${percent(found.cannotBeTold)}; checks: median ${found.medianChecks}, most ${found.mostChecks}`,
    missed.length === 0 ? '' : `(${missed.join('; ')})`,
  )
  return found
})
writeFileSync(path, toSvg(workshopPicture(tallies, `Simulated workshop: ${rings} rings a habit`)))
console.log(`picture: ${path}`)
